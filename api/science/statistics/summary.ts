import { max, median, min } from 'simple-statistics'
import { moments } from './moments.ts'
import { studentTQuantile } from './student-t.ts'
import { ifFinite, isUnavailable, tooLarge, type Unavailable } from './unavailable.ts'

/** What one list of values says by itself, with the t interval of its mean. */
export type Summary = {
  readonly n: number
  readonly mean: number
  readonly sd: number | Unavailable
  readonly se: number | Unavailable
  readonly lower: number | Unavailable
  readonly upper: number | Unavailable
  readonly median: number
  readonly min: number
  readonly max: number
}

/**
 * Summary of a list of values; `level` is the two-sided confidence of the interval.
 *
 * @throws RangeError when there is no value
 *
 * @example
 * summary([1, 2, 6], { level: 0.95 }) // { n: 3, mean: 3, sd: 2.6457513, se: 1.5275252, lower: -3.5724, upper: 9.5724, median: 2, min: 1, max: 6 }
 */
export function summary(values: readonly number[], { level }: { readonly level: number }): Summary {
  const { n, mean, squares } = moments(values)
  const list = [...values]
  const place = { n, mean, median: median(list), min: min(list), max: max(list) }
  if (n === 1) {
    const alone = { unavailable: 'One value alone has no spread.' }
    return { ...place, sd: alone, se: alone, lower: alone, upper: alone }
  }
  const sd = Math.sqrt(squares / (n - 1))
  const se = sd / Math.sqrt(n)
  if (se === 0 && place.max > place.min)
    return { ...place, sd: tooLarge, se: tooLarge, lower: tooLarge, upper: tooLarge }
  if (se === 0) {
    const equal = { unavailable: 'All values are equal: were they copied or rounded?' }
    return { ...place, sd, se, lower: equal, upper: equal }
  }
  const reach = -studentTQuantile((1 - level) / 2, n - 1) * se
  const spread = ifFinite({ sd, se, lower: mean - reach, upper: mean + reach })
  if (isUnavailable(spread)) return { ...place, sd: spread, se: spread, lower: spread, upper: spread }
  return { ...place, ...spread }
}
