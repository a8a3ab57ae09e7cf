import { incompleteGamma } from './incomplete-gamma.ts'
import { quantileOf } from './quantile-of.ts'
import type { Tails } from './tails.ts'

/**
 * The chi-squared distribution with `df` degrees of freedom (any number above 0), at x (Abramowitz & Stegun
 * 1964, 26.4.19).
 *
 * @throws RangeError unless df is above 0 and x is a number
 *
 * @example
 * chiSquared(6.539, 3).upper // 0.0881370644864363
 */
export function chiSquared(x: number, df: number): Tails {
  if (!(df > 0)) throw new RangeError('degrees of freedom are above 0')
  if (Number.isNaN(x)) throw new RangeError('this takes a number')
  return x <= 0 ? { lower: 0, upper: 1 } : incompleteGamma(df / 2, x / 2)
}

/**
 * The place of the chi-squared distribution that has the probability `p` below it.
 *
 * @throws RangeError when p is not strictly between 0 and 1, or the place is too near 0 to be told
 *
 * @example
 * chiSquaredQuantile(0.95, 2) // 5.99146454710798
 */
export function chiSquaredQuantile(p: number, df: number): number {
  return Math.exp(quantileOf((v) => chiSquared(Math.exp(v), df), p, { start: Math.log(df), limit: 740 }))
}
