import { incompleteBeta } from './incomplete-beta.ts'
import { normal, normalQuantile } from './normal.ts'
import { quantileOf } from './quantile-of.ts'
import type { Tails } from './tails.ts'

const asGoodAsNormal = 1e6

/**
 * Student's t distribution with `df` degrees of freedom (any number above 0, also infinite), at t.
 *
 * By the incomplete beta function (Abramowitz & Stegun 1964, 26.7.1). Above a million degrees of freedom by the
 * normal distribution with the correction of Hill (1970), Commun. ACM 13, 617–619.
 *
 * @throws RangeError unless df is above 0 and t is a number
 *
 * @example
 * studentT(-15, 6).lower // 2.76512006929528e-6
 */
export function studentT(t: number, df: number): Tails {
  if (!(df > 0)) throw new RangeError('degrees of freedom are above 0')
  if (Number.isNaN(t)) throw new RangeError('this takes a number')
  if (df > asGoodAsNormal) return normal(Math.sign(t) * nearlyNormal(Math.abs(t), df))
  const upper = beyond(Math.abs(t), df).upper / 2
  return t < 0 ? { lower: upper, upper: 1 - upper } : { lower: 1 - upper, upper }
}

/** How likely |T| is within t, and beyond it. */
function beyond(t: number, df: number): Tails {
  const ratio = t / Math.sqrt(df)
  const logOdds = 2 * Math.log(t) - Math.log(df)
  return incompleteBeta(0.5, df / 2, { odds: ratio * ratio, logOdds })
}

function nearlyNormal(t: number, df: number): number {
  if (df === Number.POSITIVE_INFINITY) return t
  const a = df - 0.5
  const z = Math.sqrt(a * Math.log1p((t / df) * t))
  return z + (z * z * z + 3 * z) / (48 * a * a)
}

/**
 * The place of Student's t distribution that has the probability `p` below it.
 *
 * @throws RangeError when p is not strictly between 0 and 1, or the place is too far out to be told
 *
 * @example
 * studentTQuantile(0.975, 4.6) // 2.639291609747
 */
export function studentTQuantile(p: number, df: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError('a probability lies strictly between 0 and 1')
  if (p === 0.5) return 0
  if (df === Number.POSITIVE_INFINITY) return normalQuantile(p)
  const tail = p < 0.5 ? p : 1 - p
  // |T| has twice the tail; near the middle its lower side, 1 − 2p, is the one that keeps digits.
  const within = (v: number) => {
    const t = Math.exp(v)
    if (df <= asGoodAsNormal) return beyond(t, df)
    const { lower, upper } = normal(nearlyNormal(t, df))
    return { lower: lower - upper, upper: 2 * upper }
  }
  const t = Math.exp(quantileOf(within, { lower: 1 - 2 * tail, upper: 2 * tail }, { limit: 709 }))
  return p < 0.5 ? -t : t
}
