import { root } from './root.ts'
import type { Tails } from './tails.ts'

/**
 * The place at which a distribution has the probability `p` below it, found on the logarithm of the smaller
 * tail, so that far quantiles are as good as near ones.
 *
 * `tailsAt` takes a place on any increasing scale (the logarithm of a positive quantity, say); the search begins
 * at `start` and widens by doubled steps up to `limit` either way. Both tails may be given in place of `p`, for
 * one that is too near 1 to be written down.
 *
 * @throws RangeError when `p` is not strictly between 0 and 1, or the place lies beyond the limit
 *
 * @example
 * quantileOf((x) => ({ lower: x, upper: 1 - x }), 0.3, { start: 0.5, step: 0.1 }) // 0.3
 */
export function quantileOf(
  tailsAt: (place: number) => Tails,
  p: number | Tails,
  { start = 0, step = 1, limit = 1e300 }: { start?: number; step?: number; limit?: number } = {},
): number {
  const wanted = typeof p === 'number' ? { lower: p, upper: 1 - p } : p
  if (!(wanted.lower > 0 && wanted.upper > 0))
    throw new RangeError('a probability lies strictly between 0 and 1')
  const log = (q: number) => (q > 0 ? Math.log(q) : -800)
  const low = wanted.lower <= wanted.upper
  const target = Math.log(low ? wanted.lower : wanted.upper)
  const above = (place: number) => {
    const tails = tailsAt(place)
    return low ? log(tails.lower) - target : target - log(tails.upper)
  }
  const first = above(start)
  if (first === 0) return start
  const sign = first > 0 ? -1 : 1
  let near = start
  let width = step
  for (;;) {
    const next = start + sign * Math.min(limit, Math.abs(near - start) + width)
    if (above(next) > 0 === sign > 0) return root(above, near, next)
    if (Math.abs(next - start) >= limit)
      throw new RangeError('this quantile lies beyond the numbers that can be told')
    near = next
    width *= 2
  }
}
