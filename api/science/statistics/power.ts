import { fQuantile } from './f-distribution.ts'
import { logGamma } from './log-gamma.ts'
import { noncentralF } from './noncentral-f.ts'
import { noncentralT } from './noncentral-t.ts'
import { normalBetween } from './normal.ts'
import { studentTQuantile } from './student-t.ts'

/** Beyond this every chance is 1 to the last digit; it keeps the distributions within their bounds. */
const certain = { t: 1e8, F: 1e6 }

export type UnitsQuestion = {
  /** Of single units, or of the differences when paired. */
  readonly sd: number
  /** True difference; for "no worse" the distance from it to the margin. */
  readonly effect: number
  readonly paired?: boolean
  readonly level?: number
}

/** Degrees of freedom and standard error of the difference, for `n` a group, or `n` pairs. */
function of(n: number, { sd, paired = false }: UnitsQuestion) {
  return paired ? { df: n - 1, se: sd / Math.sqrt(n) } : { df: 2 * (n - 1), se: sd * Math.sqrt(2 / n) }
}

/**
 * The chance that a two-sided t-test finds a true difference, both tails counted; `n` units a group, or pairs.
 *
 * @throws RangeError when there are no degrees of freedom
 *
 * @example
 * powerOfDifference(5, { effect: 1, sd: 0.6 }) // 0.637850114620663
 */
export function powerOfDifference(n: number, question: UnitsQuestion): number {
  const { effect, level = 0.95 } = question
  const { df, se } = of(n, question)
  return powerOfT({ df, noncentrality: Math.abs(effect) / se, level })
}

/**
 * The same by its degrees of freedom and noncentrality, for any design whose difference has them.
 *
 * @example
 * powerOfT({ df: 6, noncentrality: 2.88675134594813 }) // 0.674198086298813
 */
export function powerOfT({
  df,
  noncentrality,
  level = 0.95,
}: {
  readonly df: number
  readonly noncentrality: number
  readonly level?: number
}): number {
  const critical = -studentTQuantile((1 - level) / 2, df)
  const shift = Math.min(certain.t, noncentrality)
  return Math.min(1, noncentralT(critical, df, shift).upper + noncentralT(-critical, df, shift).lower)
}

/**
 * The chance that a one-sided t-test shows "no worse", `effect` being the distance from the true difference to the
 * margin.
 *
 * @throws RangeError when there are no degrees of freedom
 *
 * @example
 * powerOfNoWorse(6, { effect: 1, sd: 0.5 }) // 0.942028580997258
 */
export function powerOfNoWorse(n: number, question: UnitsQuestion): number {
  const { effect, level = 0.95 } = question
  const { df, se } = of(n, question)
  const shift = Math.max(-certain.t, Math.min(certain.t, effect / se))
  return noncentralT(-studentTQuantile(1 - level, df), df, shift).upper
}

/**
 * The chance that a one-way analysis of variance finds that means differ, `n` units a group.
 *
 * @throws RangeError when there are no degrees of freedom
 *
 * @example
 * powerOfGroups(3, { means: [5, 3.5, 2.8, 2.5], sd: 0.9 }) // 0.681823866793004
 */
export function powerOfGroups(
  n: number,
  {
    means,
    sd,
    level = 0.95,
  }: { readonly means: readonly number[]; readonly sd: number; readonly level?: number },
): number {
  const k = means.length
  const first = means[0] ?? 0
  const middle = means.reduce((sum, mean) => sum + (mean - first), 0) / k
  const spread = means.reduce((sum, mean) => sum + ((mean - first - middle) / sd) ** 2, 0)
  const [df1, df2] = [k - 1, k * (n - 1)]
  const critical = 1 / fQuantile(1 - level, df2, df1)
  return noncentralF(critical, df1, df2, Math.min(certain.F, n * spread)).upper
}

/**
 * The chance that two one-sided tests show a true difference to lie within ± margin.
 *
 * The mean over the estimated spread, up to the one at which no interval fits into the margin any more, by the
 * double-exponential rule of Takahasi & Mori (1974); the same as a difference of Owen's Q (Phillips 1990,
 * J. Pharmacokin. Biopharm. 18, 137–144).
 *
 * @throws RangeError when there are no degrees of freedom
 *
 * @example
 * powerOfEquivalence(6, { margin: 1, effect: 0, sd: 0.5 }) // 0.88406330387282
 */
export function powerOfEquivalence(n: number, question: UnitsQuestion & { readonly margin: number }): number {
  const { effect, margin, level = 0.95 } = question
  const { df, se } = of(n, question)
  const critical = -studentTQuantile(1 - level, df)
  const most = margin / (critical * se)
  const m = df / 2
  const logFront = Math.LN2 + m * Math.log(m) - logGamma(m)
  const step = 1 / 64
  let sum = 0
  for (let i = -256; i <= 256; i++) {
    const u = (Math.PI / 2) * Math.sinh(i * step)
    const s = most / (1 + Math.exp(-2 * u))
    if (s === 0) continue
    const width = ((most * Math.PI) / 4) * (Math.cosh(i * step) / Math.cosh(u) ** 2)
    const density = Math.exp(logFront + (df - 1) * Math.log(s) - m * s * s)
    const from = (-margin - effect) / se + critical * s
    const to = (margin - effect) / se - critical * s
    if (to > from && width > 0) sum += density * width * normalBetween(from, to)
  }
  return Math.min(1, sum * step)
}

/**
 * The smallest whole number from `from` on with which a growing chance reaches `power`.
 *
 * @returns undefined when even `most` does not reach it
 *
 * @example
 * smallestN((n) => 1 - 1 / n, { power: 0.8, from: 2, most: 1000 }) // 5
 */
export function smallestN(
  chance: (n: number) => number,
  { power, from, most }: { readonly power: number; readonly from: number; readonly most: number },
): number | undefined {
  if (chance(from) >= power) return from
  let below = from
  let enough = from
  do {
    if (enough === most) return undefined
    below = enough
    enough = Math.min(most, 2 * enough)
  } while (chance(enough) < power)
  while (enough - below > 1) {
    const middle = Math.floor((below + enough) / 2)
    if (chance(middle) >= power) enough = middle
    else below = middle
  }
  return enough
}
