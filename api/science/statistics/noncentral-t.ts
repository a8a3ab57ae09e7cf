import { chiSquared } from './chi-squared.ts'
import { normalDensity, normalUpper } from './normal.ts'
import { overChi } from './over-chi.ts'
import { quantileOf } from './quantile-of.ts'
import { studentT } from './student-t.ts'
import type { Tails } from './tails.ts'

/** From here on the spread of the numerator is spread over, not that of the denominator. */
const far = 40

/**
 * The non-central t distribution, of (Z + δ) / s with Z normal and s = √(χ²/df), at t.
 *
 * P(T ≤ t) is the mean of Φ(ts − δ) over s (Johnson, Kotz & Balakrishnan 1995, Continuous Univariate
 * Distributions 2, chapter 31), each tail by itself.
 *
 * @throws RangeError unless df is above 0 and t and the noncentrality are finite, the latter within ±10⁸
 *
 * @example
 * noncentralT(3, 14, 1).upper // 0.0441045362752782
 */
export function noncentralT(t: number, df: number, noncentrality: number): Tails {
  if (!(df > 0)) throw new RangeError('degrees of freedom are above 0')
  if (!Number.isFinite(t)) throw new RangeError('this takes a finite number')
  if (!(Math.abs(noncentrality) <= 1e8)) throw new RangeError('a noncentrality lies within ±10⁸')
  if (noncentrality === 0) return studentT(t, df)
  if (noncentrality < 0) {
    const { lower, upper } = noncentralT(-t, df, -noncentrality)
    return { lower: upper, upper: lower }
  }
  if (noncentrality > far) return overNumerator(t, df, noncentrality)
  return {
    lower: mixture(t, df, noncentrality, 1),
    upper: mixture(t, df, noncentrality, -1),
  }
}

function mixture(t: number, df: number, delta: number, side: 1 | -1): number {
  const f = (s: number) => normalUpper(side * (delta - t * s))
  // Where the bell of the numerator bites, weight × f peaks at the root of (df + t²) s² − tδ s − df = 0.
  const bites = side * (delta - t) > 0
  const half = (t * delta) / 2
  const sum = df + t * t
  const root = Math.sqrt(half * half + df * sum)
  const peak = bites ? (half >= 0 ? (half + root) / sum : df / (root - half)) : 1
  const safe = Number.isFinite(peak) && peak > 0 ? peak : Math.sqrt(df) / Math.abs(t)
  return Math.min(1, overChi(df, f, { peak: safe, curvature: 2 * df + delta * delta }))
}

/** The mean over Z of P(s ≥ (Z + δ) / t), for a noncentrality beside which Z is small. */
function overNumerator(t: number, df: number, delta: number): Tails {
  if (t <= 0) return { lower: 0, upper: 1 }
  const step = Math.max(0.005, Math.min(0.1, t / Math.sqrt(8 * df)))
  let lower = 0
  let upper = 0
  for (let z = -37; z <= 37; z += step) {
    const s = Math.max(0, z + delta) / t
    const tails = chiSquared(df * s * s, df)
    lower += normalDensity(z) * tails.upper
    upper += normalDensity(z) * tails.lower
  }
  return { lower: Math.min(1, lower * step), upper: Math.min(1, upper * step) }
}

/**
 * The place of the non-central t distribution that has the probability `p` below it.
 *
 * @throws RangeError when p is not strictly between 0 and 1, or the place is too far out to be told
 *
 * @example
 * noncentralTQuantile(0.955895463724729, 14, 1) // 3
 */
export function noncentralTQuantile(p: number, df: number, noncentrality: number): number {
  const tails = (v: number) => noncentralT(Math.sinh(v), df, noncentrality)
  return Math.sinh(quantileOf(tails, p, { start: Math.asinh(noncentrality), step: 0.5, limit: 690 }))
}
