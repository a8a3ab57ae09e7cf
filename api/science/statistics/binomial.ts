import { incompleteBeta } from './incomplete-beta.ts'

/**
 * The chance of k or more out of n, each with the same chance: P(X ≥ k) = I_share(k, n − k + 1).
 *
 * Source: Abramowitz & Stegun (1964), Handbook of Mathematical Functions, 26.5.24.
 *
 * @param share  0–1; a half for a sign test.
 * @throws RangeError unless k and n are whole, n is 0 or more, and share lies within 0–1
 *
 * @example
 * [binomialAtLeast(5, 5), binomialAtLeast(4, 5), binomialAtLeast(0, 5)] // [0.03125, 0.1875, 1]
 */
export function binomialAtLeast(k: number, n: number, share = 0.5): number {
  if (!(Number.isInteger(k) && Number.isInteger(n) && n >= 0))
    throw new RangeError('counts are whole numbers, 0 or more')
  if (!(share >= 0 && share <= 1)) throw new RangeError('a share lies within 0 and 1')
  if (k <= 0) return 1
  if (k > n) return 0
  return incompleteBeta(k, n - k + 1, { odds: share / (1 - share) }).lower
}
