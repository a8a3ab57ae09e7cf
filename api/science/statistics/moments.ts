import { sum } from 'simple-statistics'

/** The mean of some values and the sum of squares about it. `fromOrigin` is the mean less the origin. */
export type Moments = {
  readonly n: number
  readonly mean: number
  readonly fromOrigin: number
  readonly squares: number
}

/**
 * Mean and sum of squares, without the loss of digits that values with a large common part suffer: an origin among
 * them is taken off first, then the mean (Chan, Golub & LeVeque 1983, Am. Stat. 37, 242–247). Values that are
 * equal have squares of exactly 0.
 *
 * Means of several lists are best subtracted by `fromOrigin`, with one origin for all.
 *
 * @throws RangeError when there is no value
 *
 * @example
 * moments([1e9 + 1, 1e9 + 2, 1e9 + 6]) // { n: 3, mean: 1000000003, fromOrigin: 2, squares: 14 }
 */
export function moments(values: readonly number[], origin = values[0]): Moments {
  const first = values[0]
  if (first === undefined || origin === undefined) throw new RangeError('a mean needs at least one value')
  const n = values.length
  const shift = sum(values.map((value) => value - first)) / n
  const squares = sum(values.map((value) => (value - first - shift) ** 2))
  const fromOrigin = first - origin + shift
  return { n, mean: origin + fromOrigin, fromOrigin, squares }
}
