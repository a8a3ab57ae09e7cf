import { fDistribution } from './f-distribution.ts'
import { betaFront, incompleteBeta } from './incomplete-beta.ts'
import { stirlingRemainder } from './log-gamma.ts'
import { log1pMinus } from './log1p-minus.ts'
import { quantileOf } from './quantile-of.ts'
import type { Tails } from './tails.ts'

/**
 * The non-central F distribution with noncentrality λ, at F.
 *
 * A Poisson mixture of incomplete beta functions (Abramowitz & Stegun 1964, 26.6.18). From one term to the next
 * the beta function changes by a known amount, which is always added and never taken away: the lower tail runs
 * from the top down, the upper from the bottom up.
 *
 * @throws RangeError unless degrees of freedom are above 0, F is finite and 0 ≤ λ ≤ 10⁶
 *
 * @example
 * noncentralF(3.2, 3, 20, 11).upper // 0.697253712511689
 */
export function noncentralF(F: number, df1: number, df2: number, noncentrality: number): Tails {
  if (!(df1 > 0 && df2 > 0)) throw new RangeError('degrees of freedom are above 0')
  if (!Number.isFinite(F)) throw new RangeError('this takes a finite number')
  if (!(noncentrality >= 0 && noncentrality <= 1e6))
    throw new RangeError('the noncentrality of F lies between 0 and 10⁶')
  if (noncentrality === 0 || F <= 0) return fDistribution(F, df1, df2)
  const a = df1 / 2
  const b = df2 / 2
  const odds = (df1 / df2) * F
  const place = { odds, logOdds: Math.log(F) + Math.log(df1 / df2) }
  const x = odds === Number.POSITIVE_INFINITY ? 1 : odds / (1 + odds)
  const y = 1 / (1 + odds)
  const half = noncentrality / 2
  const weight = (j: number) => poisson(j, half)
  const step = (j: number) => (y > 0 && x > 0 ? Math.exp(betaFront(a + j, b, x, y)) / (a + j) : 0)

  const spread = 9 * Math.sqrt(half) + 30
  const top = Math.ceil(half + spread)
  let beta = incompleteBeta(a + top, b, place).lower
  let lower = 0
  let before = 0
  for (let j = top; j >= 0; j--) {
    const term = weight(j) * beta
    lower += term
    if (term < 1e-18 * lower && term < before) break
    before = term
    if (j > 0) beta += step(j - 1)
  }

  const bottom = Math.max(0, Math.floor(half - spread))
  beta = incompleteBeta(a + bottom, b, place).upper
  let upper = 0
  before = 0
  for (let j = bottom; j < bottom + 2_000_000; j++) {
    const term = weight(j) * beta
    upper += term
    if (j > half && term <= 1e-18 * upper && term <= before) break
    before = term
    beta = Math.min(1, beta + step(j))
  }
  return { lower: Math.min(1, lower), upper: Math.min(1, upper) }
}

/** The Poisson probability of j, about its peak so that large means keep their digits. */
function poisson(j: number, mean: number): number {
  if (j === 0) return Math.exp(-mean)
  return Math.exp(j * log1pMinus((mean - j) / j) - stirlingRemainder(j)) / Math.sqrt(2 * Math.PI * j)
}

/**
 * The place of the non-central F distribution that has the probability `p` below it.
 *
 * @throws RangeError when p is not strictly between 0 and 1, or the place is too far out to be told
 *
 * @example
 * noncentralFQuantile(0.302746287488311, 3, 20, 11) // 3.2
 */
export function noncentralFQuantile(p: number, df1: number, df2: number, noncentrality: number): number {
  const tails = (v: number) => noncentralF(Math.exp(v), df1, df2, noncentrality)
  return Math.exp(quantileOf(tails, p, { start: Math.log1p(noncentrality / df1), limit: 700 }))
}
