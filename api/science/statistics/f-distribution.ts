import { incompleteBeta } from './incomplete-beta.ts'
import { quantileOf } from './quantile-of.ts'
import type { Tails } from './tails.ts'

/**
 * Fisher's F distribution with `df1` and `df2` degrees of freedom (any numbers above 0), at F (Abramowitz &
 * Stegun 1964, 26.6.2).
 *
 * @throws RangeError unless both degrees of freedom are above 0 and F is a number
 *
 * @example
 * fDistribution(150, 3, 20).upper // 7.06271208068891e-14
 */
export function fDistribution(F: number, df1: number, df2: number): Tails {
  if (!(df1 > 0 && df2 > 0)) throw new RangeError('degrees of freedom are above 0')
  if (Number.isNaN(F)) throw new RangeError('this takes a number')
  if (F <= 0) return { lower: 0, upper: 1 }
  const odds = (df1 / df2) * F
  return incompleteBeta(df1 / 2, df2 / 2, { odds, logOdds: Math.log(F) + Math.log(df1 / df2) })
}

/**
 * The place of the F distribution that has the probability `p` below it.
 *
 * @throws RangeError when p is not strictly between 0 and 1, or the place is too far out to be told
 *
 * @example
 * fQuantile(0.95, 3, 12) // 3.4902948194976
 */
export function fQuantile(p: number, df1: number, df2: number): number {
  return Math.exp(quantileOf((v) => fDistribution(Math.exp(v), df1, df2), p, { limit: 700 }))
}
