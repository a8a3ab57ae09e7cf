import { inDirections, type LinearModel } from './linear-model.ts'
import type { Hypothesis } from './linear-model-hypotheses.ts'
import { eigenOfSymmetric } from './matrix-eigen.ts'
import type { Unavailable } from './model-spec.ts'
import { jointDf } from './reml-degrees-of-freedom.ts'

/** How estimates of a fitted model are judged: by what spread, and with how many degrees of freedom. */
export type Judge = {
  /** The fixed effects in the model's directions, scaled. */
  readonly effects: Float64Array
  /** Scaled covariance of two vectors' estimates. */
  readonly covariance: (a: Float64Array, b: Float64Array) => number
  readonly df: (vector: Float64Array, terms: readonly number[]) => number | Unavailable
  /** By least squares: the residual variance. Covariance is then this times the plain product. */
  readonly spread?: number | undefined
  /** Terms without any judgement, by their place, and why. */
  readonly unjudged: ReadonlyMap<number, string>
  /** When nothing at all can be judged: why. */
  readonly nothing?: string | undefined
}

export type Judged = {
  readonly vector: Float64Array
  readonly estimate: number
  readonly se: number
  readonly df: number
}

/** An estimate may stand although nothing can be said of how sure it is. */
export type NotJudged = { readonly unavailable: string; readonly estimate?: number }

/**
 * Estimate, standard error and degrees of freedom of a weighted sum of coefficients.
 *
 * @example
 * const model = {
 *   rank: 2, scale: 1, origin: 0, aliasedColumns: new Set(), dropped: new Set(),
 *   design: { pivot: [0, 1], coordinates: [1, 0, 0, 1] }, columns: [{ term: 0 }, { term: 1 }],
 * }
 * const covariance = (a, b) => a[0] * b[0] + a[1] * b[1]
 * const judge = { effects: [5, 2], covariance, df: () => 8, unjudged: new Map() }
 * judged(model, judge, [1, 1]) // { estimate: 7, se: 1.414, df: 8 }
 */
export function judged(model: LinearModel, judge: Judge, weights: Float64Array): Judged | NotJudged {
  const vector = inDirections(model, weights)
  if (!vector)
    return { unavailable: 'It hangs on a cell without rows, or on terms that cannot be told apart.' }
  const estimate = product(judge.effects, vector) * model.scale + model.origin * weights[0]!
  if (judge.nothing !== undefined) return { estimate, unavailable: judge.nothing }
  const terms = termsWeighed(model, weights)
  for (const term of terms) {
    const reason = judge.unjudged.get(term)
    if (reason !== undefined) return { estimate, unavailable: reason }
  }
  const df = judge.df(vector, terms)
  if (typeof df !== 'number') return { estimate, ...df }
  const se = Math.sqrt(judge.covariance(vector, vector)) * model.scale
  if (!(se > 0)) return { estimate, unavailable: 'Nothing is compared here.' }
  return { vector, estimate, se, df }
}

function termsWeighed(model: LinearModel, weights: Float64Array): number[] {
  const largest = weights.reduce((most, it) => Math.max(most, Math.abs(it)), 0)
  const terms = new Set<number>()
  weights.forEach((weight, column) => {
    if (Math.abs(weight) > 1e-12 * largest) terms.add(model.columns[column]!.term)
  })
  return [...terms].filter((term) => !model.dropped.has(term))
}

function product(a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let k = 0; k < a.length; k++) sum += a[k]! * b[k]!
  return sum
}

/** The F test of a term: mean square over `df1` directions, and the degrees of freedom it is held against. */
export type Tested = { readonly df1: number; readonly df2: number; readonly F: number; readonly ss: number }

/**
 * Tests a term in the directions of its hypothesis; `ss` is the scaled sum of squares by least squares.
 *
 * @example
 * const model = { rank: 1 }
 * const judge = { effects: [3], spread: 2, df: () => 6, unjudged: new Map() }
 * tested(model, judge, { directions: [[1]], contrasts: [[1]] }, 1) // { df1: 1, df2: 6, F: 4.5, ss: 9 }
 */
export function tested(
  model: LinearModel,
  judge: Judge,
  hypothesis: Hypothesis,
  place: number,
): Tested | (Unavailable & { readonly df1?: number; readonly ss?: number }) {
  if ('unavailable' in hypothesis) return hypothesis
  const { directions, contrasts } = hypothesis
  const df1 = directions.length
  const ss = directions.reduce((sum, it) => sum + product(it, judge.effects) ** 2, 0)
  const reason = judge.nothing ?? judge.unjudged.get(place)
  if (reason !== undefined) return { unavailable: reason, df1, ss }
  if (judge.spread !== undefined) {
    const df2 = judge.df(directions[0]!, [place])
    return typeof df2 === 'number' ? { df1, df2, F: ss / df1 / judge.spread, ss } : { ...df2, df1, ss }
  }
  const estimates = contrasts.map((it) => product(it, judge.effects))
  const covariance = new Float64Array(df1 * df1)
  for (let a = 0; a < df1; a++)
    for (let b = 0; b <= a; b++) {
      const value = judge.covariance(contrasts[a]!, contrasts[b]!)
      covariance[a * df1 + b] = value
      covariance[b * df1 + a] = value
    }
  const { values, vectors } = eigenOfSymmetric(covariance, df1)
  let F = 0
  const each: number[] = []
  for (let m = 0; m < df1; m++) {
    const vector = new Float64Array(model.rank)
    let along = 0
    for (let a = 0; a < df1; a++) {
      const share = vectors[a * df1 + m]!
      along += share * estimates[a]!
      for (let k = 0; k < model.rank; k++) vector[k]! += share * contrasts[a]![k]!
    }
    F += (along * along) / values[m]! / df1
    const df = judge.df(vector, [place])
    if (typeof df !== 'number') return { ...df, df1, ss }
    each.push(df)
  }
  if (!Number.isFinite(F))
    return { unavailable: 'The numbers are too far apart to be worked out together.', df1, ss }
  return { df1, df2: jointDf(each), F, ss }
}
