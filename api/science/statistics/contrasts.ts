import { quantileByDf } from './contrasts-quantiles.ts'
import { dunnettQuantileOfLoadings, dunnettUpperOfLoadings } from './dunnett.ts'
import { holm } from './holm.ts'
import type { LinearModel } from './linear-model.ts'
import { type Judge, type Judged, judged, type NotJudged } from './model-judge.ts'
import type { Adjusted, ModelContrast, Named } from './model-spec.ts'
import { studentT, studentTQuantile } from './student-t.ts'
import { studentizedRangeQuantile, studentizedRangeUpper } from './studentized-range.ts'

/** A mean by its label and its weights of the coefficients. */
export type LabelledMean = { readonly label: string; readonly weights: Float64Array }

type Pair = { readonly a: number; readonly b: number; readonly told: Judged | NotJudged }

export type ContrastsAsked = {
  readonly kind: 'pairwise' | 'reference'
  /** The place of the reference among the means. */
  readonly reference: number
  readonly level: number
}

/**
 * Differences of marginal means, b − a: all pairs by Tukey's rule, or all against one reference by Dunnett's where the
 * means share one covariance (then their comparisons have the correlations that it needs), by Holm's otherwise. The
 * limits go with the p-values: of the whole family at once (for Holm by Bonferroni). One pair alone needs no adjusting.
 *
 * Sources: Tukey and Kramer as in Hochberg and Tamhane (1987), Multiple Comparison Procedures, sections 3.2 and 5.2;
 * Holm (1979), Scand. J. Stat. 6, 65–70.
 *
 * @example
 * const model = {
 *   rank: 2, scale: 1, origin: 0, aliasedColumns: new Set(), dropped: new Set(),
 *   design: { pivot: [0, 1], coordinates: [1, 0, 0, 1] }, columns: [{ term: 0 }, { term: 1 }],
 * }
 * const covariance = (a, b) => a[0] * b[0] + a[1] * b[1]
 * const judge = { effects: [5, 2], covariance, df: () => 8, unjudged: new Map() }
 * const means = [{ label: '10', weights: [1, 0] }, { label: '20', weights: [1, 1] }]
 * const asked = { kind: 'pairwise', reference: 0, level: 0.95 }
 * contrastsOf(model, judge, means, asked)[0] // { a: '10', b: '20', difference: 2, se: 1, t: 2, p: 0.0805, adjusted: 'none' }
 */
export function contrastsOf(
  model: LinearModel,
  judge: Judge,
  means: readonly LabelledMean[],
  { kind, reference, level }: ContrastsAsked,
): Named<{ a: string; b: string }, ModelContrast>[] {
  const pairs: Pair[] = []
  for (let b = 0; b < means.length; b++) {
    if (kind === 'reference') {
      if (b !== reference) pairs.push(pair(model, judge, means, reference, b))
    } else for (let a = 0; a < b; a++) pairs.push(pair(model, judge, means, a, b))
  }
  pairs.sort((x, y) => x.a - y.a || x.b - y.b)
  const told = pairs.flatMap((it) => ('se' in it.told ? [it.told] : []))
  const family = familyOf(model, judge, means, { kind, reference, level }, pairs.length, told)
  let place = 0
  return pairs.map(({ a, b, told: it }) => {
    const names = { a: means[a]!.label, b: means[b]!.label }
    if (!('se' in it)) {
      const { estimate, unavailable } = it
      return { ...names, ...(estimate === undefined ? {} : { difference: estimate }), unavailable }
    }
    const t = it.estimate / it.se
    const p = twoSided(t, it.df)
    const reach = studentTQuantile(0.5 + level / 2, it.df) * it.se
    const far = family.critical(it.df) * it.se
    return {
      ...names,
      difference: it.estimate,
      se: it.se,
      df: it.df,
      t,
      p: family.p(t, it.df, place++),
      lower: it.estimate - far,
      upper: it.estimate + far,
      adjusted: family.adjusted,
      single: { p, lower: it.estimate - reach, upper: it.estimate + reach },
    }
  })
}

function pair(model: LinearModel, judge: Judge, means: readonly LabelledMean[], a: number, b: number): Pair {
  const from = means[a]!.weights
  return {
    a,
    b,
    told: judged(
      model,
      judge,
      means[b]!.weights.map((weight, i) => weight - from[i]!),
    ),
  }
}

/**
 * The two-sided p-value of t.
 *
 * @example
 * twoSided(2, 8) // 0.0805
 */
export const twoSided = (t: number, df: number): number => 2 * studentT(-Math.abs(t), df).lower

type Family = {
  readonly adjusted: Adjusted
  readonly p: (t: number, df: number, place: number) => number
  readonly critical: (df: number) => number
}

function familyOf(
  model: LinearModel,
  judge: Judge,
  means: readonly LabelledMean[],
  { kind, reference, level }: ContrastsAsked,
  pairs: number,
  told: readonly Judged[],
): Family {
  const dfs = told.map((it) => it.df)
  if (pairs === 1)
    return { adjusted: 'none', p: twoSided, critical: (df) => studentTQuantile(0.5 + level / 2, df) }
  if (kind === 'pairwise') {
    const groups = means.length
    return {
      adjusted: 'tukey',
      p: (t, df) => studentizedRangeUpper(Math.abs(t) * Math.SQRT2, { groups, df }),
      critical: quantileByDf((df) => studentizedRangeQuantile(level, { groups, df }) / Math.SQRT2, dfs),
    }
  }
  const loadings = loadingsOf(model, judge, means, reference)
  if (loadings) {
    return {
      adjusted: 'dunnett',
      p: (t, df) => dunnettUpperOfLoadings(Math.abs(t), { df, loadings, sides: 2 }),
      critical: quantileByDf((df) => dunnettQuantileOfLoadings(level, { df, loadings, sides: 2 }), dfs),
    }
  }
  const ps = holm(told.map((it) => twoSided(it.estimate / it.se, it.df)))
  return {
    adjusted: 'holm',
    p: (_, __, place) => ps[place]!,
    critical: (df) => studentTQuantile(1 - (1 - level) / 2 / pairs, df),
  }
}

/**
 * Loadings of Dunnett's correlations where all means have one and the same covariance c with each other:
 * λᵢ = √((v₀ − c) / (v₀ + vᵢ − 2c)). With independent means c is 0; in complete blocks it is what a block gives to all.
 */
function loadingsOf(
  model: LinearModel,
  judge: Judge,
  means: readonly LabelledMean[],
  reference: number,
): number[] | undefined {
  const vectors: Float64Array[] = []
  for (const { weights } of means) {
    const told = judged(model, judge, weights)
    if (!('se' in told)) return undefined
    vectors.push(told.vector)
  }
  const variances = vectors.map((it) => judge.covariance(it, it))
  const shared = judge.covariance(vectors[0]!, vectors[1]!)
  const slack = 1e-7 * Math.max(...variances)
  for (let i = 0; i < vectors.length; i++)
    for (let k = 0; k < i; k++)
      if (Math.abs(judge.covariance(vectors[i]!, vectors[k]!) - shared) > slack) return undefined
  const own = variances[reference]! - shared
  if (!(own > slack)) return undefined
  const loadings = variances.flatMap((variance, i) =>
    // Rounded, so that means of equal variance share one loading.
    i === reference ? [] : [Number(Math.sqrt(own / (own + variance - shared)).toFixed(12))],
  )
  return loadings.every((it) => it < 0.9999) ? loadings : undefined
}
