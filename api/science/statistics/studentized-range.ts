import { normalRange } from './normal-range.ts'
import { overChi } from './over-chi.ts'
import { quantileOf } from './quantile-of.ts'
import type { Tails } from './tails.ts'

export type RangeOf = { readonly groups: number; readonly df: number }

/**
 * The studentized range: the range of the means of `groups` groups over their estimated standard error, at q.
 *
 * The range of normal values (see normal-range.ts) spread over the estimate of the standard deviation, by
 * quadrature in both; Tukey (1953) and Hartley (1942) for the distribution itself.
 *
 * @throws RangeError unless there are 2 to 10,000 groups, df is above 0 and q is a number
 *
 * @example
 * studentizedRange(3.9, { groups: 4, df: 8 }).upper // 0.0936510747086627
 */
export function studentizedRange(q: number, of: RangeOf): Tails {
  if (Number.isNaN(q)) throw new RangeError('this takes a number')
  if (q <= 0) return { lower: 0, upper: 1 }
  const upper = studentizedRangeUpper(q, of)
  // What lies below is the small side only where nearly all lies above; else the rest of 1 has all its digits.
  if (upper < 0.9) return { lower: 1 - upper, upper }
  const { lower: within } = normalRange(of.groups)
  const peak = Math.sqrt((of.df + Math.min(of.groups - 1, 2 / (q * q))) / of.df)
  return {
    lower: Math.min(
      1,
      overChi(of.df, (s) => within(q * s), { peak }),
    ),
    upper,
  }
}

/**
 * The probability of a studentized range of more than q, fast enough for thousands of pairs.
 *
 * @throws RangeError as studentizedRange does
 *
 * @example
 * studentizedRangeUpper(20, { groups: 3, df: 2 }) // 0.00905171885017773
 */
export function studentizedRangeUpper(q: number, { groups, df }: RangeOf): number {
  if (q <= 0) return 1
  const { upper } = normalRange(groups)
  const peak = q > 1e150 ? Math.sqrt(2 * df) / q : Math.sqrt(df / (df + (q * q) / 2))
  return Math.min(
    1,
    overChi(df, (s) => upper(q * s), { peak }),
  )
}

/**
 * The studentized range that has the probability `p` below it.
 *
 * @throws RangeError when p is not strictly between 0 and 1, or the place is too far out to be told
 *
 * @example
 * studentizedRangeQuantile(0.95, { groups: 3, df: 6 }) // 4.33919547652032
 */
export function studentizedRangeQuantile(p: number, of: RangeOf): number {
  // Unless p is very small the upper tail alone tells the place, and that one is cheap.
  const both = p <= 0.01
  const tails = (v: number): Tails => {
    const q = Math.exp(v)
    return both ? studentizedRange(q, of) : { lower: 1, upper: studentizedRangeUpper(q, of) }
  }
  const wanted = both || !(p < 1) ? p : { lower: 1, upper: 1 - p }
  return Math.exp(quantileOf(tails, wanted, { start: 1.2, step: 0.5, limit: 690 }))
}
