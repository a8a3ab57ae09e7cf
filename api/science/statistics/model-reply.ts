import { contrastsOf, twoSided } from './contrasts.ts'
import { fDistribution } from './f-distribution.ts'
import { type Hypothesis, hypothesesOf } from './linear-model-hypotheses.ts'
import {
  coefficientWeights,
  type MeanAt,
  marginalMeanWeights,
  meansAsked,
  repeatedAmong,
} from './marginal-means.ts'
import { columnsNamed } from './model-columns.ts'
import type { FittedModel } from './model-fit.ts'
import { judged, tested } from './model-judge.ts'
import type {
  Coefficient,
  MarginalMean,
  MeanName,
  ModelAnswer,
  ModelSpec,
  Named,
  OlsTest,
  RemlTest,
} from './model-spec.ts'
import { studentTQuantile } from './student-t.ts'

/** More groups than this are not compared with each other; so it is for `groups` too. */
const mostCompared = 64
const mostMeans = 1000

/**
 * Every coefficient as it is named, in treatment coding against the first level met.
 *
 * @example
 * const model = {
 *   rank: 1, scale: 1, origin: 0, aliasedColumns: new Set(), dropped: new Set(), factors: [{ name: 'a', levels: ['x'] }],
 *   columns: [{ name: '(Intercept)', term: 0, levels: new Map(), covariates: [] }], covariates: [],
 *   all: [{ name: '(Intercept)', factors: [], covariates: [] }], design: { pivot: [0], coordinates: [2] },
 * }
 * const judge = { effects: [6], covariance: (a, b) => a[0] * b[0], df: () => 3, unjudged: new Map() }
 * coefficientsOf({ model, judge }, 0.95)[0] // { term: '(Intercept)', estimate: 3, se: 0.5, df: 3, t: 6 }
 */
export function coefficientsOf(
  { model, judge }: FittedModel,
  level: number,
): Named<{ term: string }, Coefficient>[] {
  return model.columns.map(({ name: term }, place) => {
    if (model.aliasedColumns.has(place))
      return { term, unavailable: 'In these rows it cannot be told from the terms before it.' }
    const told = judged(model, judge, coefficientWeights(model, place))
    if (!('se' in told)) return { term, ...told }
    const { estimate, se, df } = told
    const reach = studentTQuantile(0.5 + level / 2, df) * se
    const t = estimate / se
    return { term, estimate, se, df, t, p: twoSided(t, df), lower: estimate - reach, upper: estimate + reach }
  })
}

/**
 * The tests of all terms, by least squares.
 *
 * @example
 * const all = [{ name: '', factors: [], covariates: [] }, { name: 'steam', factors: [0], covariates: [] }]
 * const design = { coordinates: Float64Array.of(1, 0, 0.5, 0.5) }
 * const model = { all, design, rank: 2, scale: 1, dropped: new Set(), factors: [{ levels: ['10', '20'] }] }
 * const judge = { effects: [1, 2], spread: 1, df: () => 4, unjudged: new Map() }
 * olsTable({ model, judge }, 'II') // [{ term: 'steam', df: 1, ss: 4, F: 4, p: 0.1161 }]
 */
export function olsTable(fitted: FittedModel, type: 'II' | 'III'): Named<{ term: string }, OlsTest>[] {
  const { scale } = fitted.model
  return eachTerm(fitted, type, (term, told) => {
    const ss = (value: number) => value * scale * scale
    if ('unavailable' in told) {
      const { df1, unavailable } = told
      return { term, ...(df1 === undefined ? {} : { df: df1, ss: ss(told.ss ?? 0) }), unavailable }
    }
    const { df1: df, df2, F } = told
    return { term, df, ss: ss(told.ss), F, p: fDistribution(F, df, df2).upper }
  })
}

/**
 * The tests of all terms of a mixed model.
 *
 * @example
 * const all = [{ name: '', factors: [], covariates: [] }, { name: 'steam', factors: [0], covariates: [] }]
 * const design = { coordinates: Float64Array.of(1, 0, 0.5, 0.5) }
 * const model = { all, design, rank: 2, scale: 1, dropped: new Set(), factors: [{ levels: ['10', '20'] }] }
 * const covariance = (a, b) => a[0] * b[0] + a[1] * b[1]
 * const judge = { effects: [1, 2], covariance, df: () => 4, unjudged: new Map() }
 * remlTable({ model, judge }, 'II') // [{ term: 'steam', df1: 1, df2: 4, F: 4, p: 0.1161 }]
 */
export function remlTable(fitted: FittedModel, type: 'II' | 'III'): Named<{ term: string }, RemlTest>[] {
  return eachTerm(fitted, type, (term, told) => {
    if ('unavailable' in told) {
      const { df1, unavailable } = told
      return { term, ...(df1 === undefined ? {} : { df1 }), unavailable }
    }
    const { df1, df2, F } = told
    return { term, df1, df2, F, p: fDistribution(F, df1, df2).upper }
  })
}

function eachTerm<Row>(
  { model, judge }: FittedModel,
  type: 'II' | 'III',
  row: (term: string, told: ReturnType<typeof tested>) => Row,
): Row[] {
  const hypotheses: readonly Hypothesis[] = hypothesesOf(model, type)
  return model.all.flatMap((term, place) =>
    place === 0 ? [] : [row(term.name, tested(model, judge, hypotheses[place]!, place))],
  )
}

/**
 * Means and contrasts that were asked for; contrasts alone ask for those of every factor.
 *
 * @example
 * const model = {
 *   rank: 1, scale: 1, origin: 0, aliasedColumns: new Set(), dropped: new Set(), factors: [{ name: 'a', levels: ['x'] }],
 *   columns: [{ name: '(Intercept)', term: 0, levels: new Map(), covariates: [] }], covariates: [],
 *   all: [{ name: '(Intercept)', factors: [], covariates: [] }], design: { pivot: [0], coordinates: [2] },
 * }
 * const judge = { effects: [6], covariance: (a, b) => a[0] * b[0], df: () => 3, unjudged: new Map() }
 * meansAndContrasts({ model, judge }, { response: 'y', meansOf: ['a'] }, 0.95).means.a // [{ level: 'x', mean: 3, se: 0.5 }]
 */
export function meansAndContrasts(
  fitted: FittedModel,
  spec: ModelSpec,
  level: number,
): Pick<ModelAnswer, 'means' | 'contrasts'> {
  const { model } = fitted
  const names = spec.meansOf ?? (spec.contrasts === undefined ? [] : (spec.factors ?? []))
  const means: ModelAnswer['means'] = {}
  const contrasts: ModelAnswer['contrasts'] = {}
  for (const name of names) {
    const named = columnsNamed(name, (it) => model.factors.some((factor) => factor.name === it)) ?? []
    const factors = named.map((it) => model.factors.findIndex((factor) => factor.name === it))
    const many = factors.reduce((product, it) => product * model.factors[it]!.levels.length, 1)
    const repeated = repeatedAmong(model, factors)
    if (repeated !== undefined || many > mostMeans) {
      const none = {
        unavailable:
          repeated === undefined
            ? `${name} has ${many} means, more than are worked out at once.`
            : `In these rows ${repeated} only repeats what the terms before it say.`,
      }
      means[name] = none
      if (spec.contrasts !== undefined) contrasts[name] = none
      continue
    }
    const asked = meansAsked(model, factors).map((at) => ({ at, weights: marginalMeanWeights(model, at) }))
    means[name] = asked.map(({ at, weights }) => meanOf(fitted, at, weights, level))
    if (spec.contrasts === undefined) continue
    if (many > mostCompared || many < 2) {
      contrasts[name] = {
        unavailable:
          many < 2
            ? `${name} has one level only, so there is nothing to compare.`
            : `${name} has ${many} levels; up to ${mostCompared} are compared with each other.`,
      }
      continue
    }
    const wanted = factors.map((it) => {
      const chosen = spec.reference?.[model.factors[it]!.name]
      return chosen === undefined ? 0 : model.factors[it]!.levels.indexOf(chosen)
    })
    contrasts[name] = contrastsOf(
      model,
      fitted.judge,
      asked.map(({ at, weights }) => ({ label: labelOf(fitted, at), weights })),
      {
        kind: spec.contrasts,
        reference: asked.findIndex(({ at }) => factors.every((it, i) => at.get(it) === wanted[i])),
        level,
      },
    )
  }
  return { means, contrasts }
}

function meanOf(
  { model, judge }: FittedModel,
  at: MeanAt,
  weights: Float64Array,
  level: number,
): Named<MeanName, MarginalMean> {
  const levels = [...at].map(([factor, place]) => {
    const { name, levels } = model.factors[factor]!
    return [name, levels[place]!] as const
  })
  const named: MeanName =
    levels.length === 1 ? { level: levels[0]![1] } : { levels: Object.fromEntries(levels) }
  const told = judged(model, judge, weights)
  if (!('se' in told)) {
    const { estimate, unavailable } = told
    return { ...named, ...(estimate === undefined ? {} : { mean: estimate }), unavailable }
  }
  const { estimate: mean, se, df } = told
  const reach = studentTQuantile(0.5 + level / 2, df) * se
  return { ...named, mean, se, df, lower: mean - reach, upper: mean + reach }
}

/** A level as it is; a combination as a term is named: `fibre=wool:steam=10`. */
function labelOf({ model }: FittedModel, at: MeanAt): string {
  const parts = [...at].map(([factor, place]) => {
    const { name, levels } = model.factors[factor]!
    return { name, level: levels[place]! }
  })
  if (parts.length === 1) return parts[0]!.level
  return parts.map(({ name, level }) => `${name}=${level}`).join(':')
}
