import { moments } from './moments.ts'
import { type TInterval, tInterval } from './t-interval.ts'
import { isUnavailable, type Unavailable } from './unavailable.ts'

export type OneSample = TInterval & {
  readonly n: number
  readonly mean: number
  readonly sd: number
  readonly se: number
  readonly df: number
}

/**
 * The mean of units with its t interval, tested against 0 (Student 1908). Values that differ by no more than rounding
 * count as equal; `scale` is the size of the numbers they were taken from, where they are differences.
 *
 * @throws RangeError when there is no value
 *
 * @example
 * oneSample([1, 2, 6], { level: 0.95 }) // { n: 3, mean: 3, sd: 2.64575, se: 1.527525, df: 2, t: 1.96396, p: 0.188497, lower: -3.5724, upper: 9.5724 }
 */
export function oneSample(
  values: readonly number[],
  { level, scale = 0 }: { readonly level: number; readonly scale?: number },
): OneSample | (Unavailable & { readonly n: number; readonly mean: number }) {
  const { n, mean, squares } = moments(values)
  if (n < 2) return { n, mean, unavailable: 'One unit alone has no spread to judge by.' }
  if (squares <= n * (4 * Number.EPSILON * scale) ** 2)
    return { n, mean, unavailable: 'All values are equal: were they copied or rounded?' }
  const sd = Math.sqrt(squares / (n - 1))
  const se = sd / Math.sqrt(n)
  const interval = tInterval({ estimate: mean, se, df: n - 1 }, { level })
  if (isUnavailable(interval)) return { n, mean, ...interval }
  return { n, mean, sd, se, df: n - 1, ...interval }
}
