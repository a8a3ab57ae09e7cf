import { integralWithTurns } from './gauss-legendre.ts'
import { normalBetween, normalDensity, normalUpper } from './normal.ts'
import { overChi } from './over-chi.ts'
import { quantileOf } from './quantile-of.ts'
import { tailTable } from './smooth-table.ts'
import type { Tails } from './tails.ts'

type Sides = 1 | 2

export type DunnettOf = {
  readonly df: number
  readonly nReference: number
  readonly nOthers: readonly number[]
  readonly sides?: Sides
}
export type DunnettLoadings = {
  readonly df: number
  readonly loadings: readonly number[]
  readonly sides?: Sides
}

/**
 * Dunnett's distribution: the largest of several t values, each a group against one and the same reference, at
 * t; the largest |t| when `sides` is 2.
 *
 * Two comparisons are correlated by λᵢλⱼ with λᵢ = √(nᵢ / (nᵢ + n₀)), so that the joint probability is one
 * integral over what they share and one over the estimated spread (Dunnett 1955, J. Am. Stat. Assoc. 50,
 * 1096–1121).
 *
 * @throws RangeError unless df and the sizes of groups are above 0 and there is a group beside the reference
 *
 * @example
 * dunnett(2.6, { df: 20, nReference: 6, nOthers: [6, 6, 6] }).upper // 0.0442037076510112
 */
export function dunnett(t: number, { df, nReference, nOthers, sides = 2 }: DunnettOf): Tails {
  return dunnettOfLoadings(t, { df, loadings: loadingsOf(nReference, nOthers), sides })
}

/**
 * The place of Dunnett's distribution that has the probability `p` below it: the critical value of a family of
 * comparisons with one reference.
 *
 * @throws RangeError when p is not strictly between 0 and 1, or the place is too far out to be told
 *
 * @example
 * dunnettQuantile(0.95, { df: 20, nReference: 6, nOthers: [6, 6, 6] }) // 2.54034960994165
 */
export function dunnettQuantile(p: number, { df, nReference, nOthers, sides = 2 }: DunnettOf): number {
  return dunnettQuantileOfLoadings(p, { df, loadings: loadingsOf(nReference, nOthers), sides })
}

function loadingsOf(nReference: number, nOthers: readonly number[]): number[] {
  if (!(nReference > 0 && nOthers.every((n) => n > 0))) throw new RangeError('the size of a group is above 0')
  return nOthers.map((n) => Math.sqrt(n / (n + nReference)))
}

/**
 * The same for comparisons whose correlations are products of given loadings: λᵢ = √(v₀ / (v₀ + vᵢ)) with the
 * variances of the estimated means, where these are independent.
 *
 * @throws RangeError unless there are 1 to 1000 loadings, strictly within ±0.999999999, and df is above 0
 *
 * @example
 * dunnettOfLoadings(2.1, { df: 20, loadings: [Math.SQRT1_2, Math.SQRT1_2, Math.SQRT1_2], sides: 1 }).upper // 0.0595660106036349
 */
export function dunnettOfLoadings(t: number, of: DunnettLoadings): Tails {
  const upper = dunnettUpperOfLoadings(t, of)
  // What lies below is the small side only where nearly all lies above; else the rest of 1 has its digits.
  if (upper < 0.9) return { lower: 1 - upper, upper }
  const { lower: within } = largestNormal(of.loadings, of.sides ?? 2)
  return {
    lower: Math.min(
      1,
      overChi(of.df, (s) => within(t * s)),
    ),
    upper,
  }
}

/**
 * The upper tail alone, fast enough for many comparisons of one family.
 *
 * @throws RangeError as dunnettOfLoadings does
 *
 * @example
 * dunnettUpperOfLoadings(2.6, { df: 20, loadings: [Math.SQRT1_2, Math.SQRT1_2, Math.SQRT1_2] }) // 0.0442037076510112
 */
export function dunnettUpperOfLoadings(t: number, { df, loadings, sides = 2 }: DunnettLoadings): number {
  if (Number.isNaN(t)) throw new RangeError('this takes a number')
  const { upper } = largestNormal(loadings, sides)
  const bites = Math.max(0, t)
  const peak = bites > 1e150 ? Math.sqrt(df) / bites : Math.sqrt(df / (df + bites * bites))
  return Math.min(
    1,
    overChi(df, (s) => upper(t * s), { peak }),
  )
}

/**
 * The critical value for given loadings.
 *
 * @throws RangeError as dunnettQuantile and dunnettOfLoadings do
 *
 * @example
 * dunnettQuantileOfLoadings(0.95, { df: 20, loadings: [Math.SQRT1_2, Math.SQRT1_2, Math.SQRT1_2] }) // 2.54034960994165
 */
export function dunnettQuantileOfLoadings(p: number, of: DunnettLoadings): number {
  // Unless p is very small the upper tail alone tells the place, and that one is cheap.
  const both = p <= 0.01
  const signed = of.sides === 1
  const tails = (v: number): Tails => {
    const t = signed ? Math.sinh(v) : Math.exp(v)
    return both ? dunnettOfLoadings(t, of) : { lower: 1, upper: dunnettUpperOfLoadings(t, of) }
  }
  const wanted = both || !(p < 1) ? p : { lower: 1, upper: 1 - p }
  const place = quantileOf(tails, wanted, { start: 0.9, step: 0.3, limit: 690 })
  return signed ? Math.sinh(place) : Math.exp(place)
}

type Largest = { readonly lower: (w: number) => number; readonly upper: (w: number) => number }
const known = new Map<string, Largest>()

/** The largest of correlated normal values with a known spread; the tables of the last few families are kept. */
function largestNormal(loadings: readonly number[], sides: Sides): Largest {
  if (loadings.length === 0 || loadings.length > 1000)
    throw new RangeError('Dunnett’s test takes 1 to 1000 groups beside the reference')
  if (!loadings.every((loading) => Math.abs(loading) <= 0.999999999))
    throw new RangeError('a loading lies strictly within ±0.999999999')
  const counts = new Map<number, number>()
  for (const loading of loadings) counts.set(loading, (counts.get(loading) ?? 0) + 1)
  const key = JSON.stringify([sides, ...counts])
  const kept = known.get(key)
  if (kept) return kept
  const groups = [...counts].map(([loading, count]) => ({
    loading,
    count,
    rest: Math.sqrt((1 - loading) * (1 + loading)),
  }))
  const made = {
    lower: (w: number) => overShared(groups, w, sides, 'lower'),
    upper: tailTable((w) => overShared(groups, w, sides, 'upper'), {
      from: sides === 2 ? 0 : -37.4,
      to: 37.4,
    }),
  }
  if (known.size > 16) known.clear()
  known.set(key, made)
  return made
}

type Group = { readonly loading: number; readonly count: number; readonly rest: number }

/**
 * The integral over z, what all comparisons share. By the trapezoid rule, which is exact here to the last digit; a
 * comparison that shares nearly all turns so quickly at z = w/λ that panels are short there and long elsewhere.
 */
function overShared(groups: readonly Group[], w: number, sides: Sides, tail: keyof Tails): number {
  if (sides === 2 && w <= 0) return tail === 'lower' ? 0 : 1
  const reach = 9 + Math.max(...groups.map(({ loading }) => Math.abs(loading))) * Math.min(Math.abs(w), 38)
  const part = tail === 'lower' ? allWithin : anyBeyond
  const integrand = (z: number) => normalDensity(z) * part(groups, w, z, sides)
  // Two-sided, the integrand is the same for z and −z.
  const [from, times] = sides === 2 ? [0, 2] : [-reach, 1]
  const steps = groups.map((group) => steepness(group, groups))
  const step = Math.min(1 / 8, ...steps)
  if (step > 1 / 20) {
    const n = Math.ceil(reach / step)
    let sum = sides === 2 ? integrand(0) / 2 : 0
    for (let i = sides === 2 ? 1 : -n; i <= n; i++) sum += integrand(i * step)
    return Math.min(1, times * sum * step)
  }
  const turns = groups.map(({ loading, rest }, i) => ({
    at: sides === 2 ? w / Math.abs(loading) : w / loading,
    reach: (9 * rest) / Math.abs(loading),
    fine: 3 * (steps[i] ?? 1),
  }))
  return Math.min(1, times * integralWithTurns(integrand, { from, to: reach, coarse: 1, turns }))
}

/** The more a comparison shares with the others the steeper it is in z, and so is the largest of many. */
function steepness({ rest, loading }: Group, groups: readonly Group[]): number {
  const alike = groups.reduce((sum, other) => sum + (other.rest < 2 * rest ? other.count : 0), 0)
  return rest / Math.max(Math.abs(loading), 0.1) / (2 + 2 * Math.sqrt(2 * Math.log(alike)))
}

function anyBeyond(groups: readonly Group[], w: number, z: number, sides: Sides): number {
  let any = 0
  for (const { loading, count, rest } of groups) {
    const shared = loading * z
    const one = normalUpper((w - shared) / rest) + (sides === 2 ? normalUpper((w + shared) / rest) : 0)
    const oneOfCount = count === 1 ? one : -Math.expm1(count * Math.log1p(-Math.min(1, one)))
    any += oneOfCount * (1 - any)
  }
  return any
}

function allWithin(groups: readonly Group[], w: number, z: number, sides: Sides): number {
  let all = 1
  for (const { loading, count, rest } of groups) {
    const upper = (w - loading * z) / rest
    const one = sides === 2 ? normalBetween((-w - loading * z) / rest, upper) : normalUpper(-upper)
    all *= one ** count
  }
  return all
}
