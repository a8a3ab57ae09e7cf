import { emptyCellsOf } from './design-matrix-cells.ts'
import type { LinearModel } from './linear-model.ts'
import { numberColumn } from './model-columns.ts'
import { modelFaults } from './model-faults.ts'
import { type FittedModel, modelFit } from './model-fit.ts'
import { modelParts } from './model-parts.ts'
import { randomPart } from './model-random.ts'
import { coefficientsOf, meansAndContrasts, olsTable, remlTable } from './model-reply.ts'
import type { ModelAnswer, ModelReply, ModelRow, ModelSpec, OlsReply, RemlReply } from './model-spec.ts'
import { holdsTerm } from './model-terms.ts'

const mostEmptyCells = 200

/** Beyond this, or closer than its inverse, the squares of numbers can no longer be added up. */
const mostSize = 1e150

/**
 * A linear model of factors, covariates and their interactions, with random intercepts by REML where asked for: tests
 * of the terms (type II or III), coefficients, marginal means and contrasts, with everything named that the rows
 * cannot tell (empty cells, copies, treatments that are one vessel). Numbers are unrounded; a part without an answer
 * holds `unavailable`.
 *
 * @throws RangeError when `modelFaults` finds a fault
 *
 * @example
 * const rows = [
 *   { steam: 10, dE: 4 }, { steam: 10, dE: 5 }, { steam: 20, dE: 2 }, { steam: 20, dE: 1 },
 * ]
 * fitModel({ response: 'dE', factors: ['steam'] }, rows).table // [{ term: 'steam', df: 1, ss: 9, F: 18, p: 0.0513 }]
 */
export function fitModel(spec: ModelSpec, rows: readonly ModelRow[]): ModelReply {
  const fault = modelFaults(spec, rows)[0]
  if (fault) throw new RangeError(fault.detail)
  const random = randomPart(rows, spec.randomIntercepts ?? [])
  const method = random.kept.length > 0 ? 'reml' : 'ols'
  const response = numberColumn(rows, spec.response)
  const without = (reason: string) => withoutAnswer(spec, rows.length, method, random.cautions, reason)
  for (const name of [spec.response, ...(spec.covariates ?? [])]) {
    const column = numberColumn(rows, name)
    if (column.some((value) => Math.abs(value) > mostSize))
      return without('The numbers are too large to be worked with.')
    const apart = column.reduce((most, value) => Math.max(most, Math.abs(value - column[0]!)), 0)
    if (apart > 0 && apart < 1 / mostSize) return without('The numbers are too close to be told apart.')
  }
  try {
    const reply = replyOf(spec, modelFit(modelParts(spec, rows), response, random))
    return allFinite(reply) ? reply : without('The numbers are too far apart to be worked with together.')
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    const words = error.message.replace(/\.$/, '')
    return without(`${words.slice(0, 1).toUpperCase()}${words.slice(1)}.`)
  }
}

/** Whether every number of a reply is one that can be written down. */
function allFinite(part: unknown): boolean {
  if (typeof part === 'number') return Number.isFinite(part)
  return part === null || typeof part !== 'object' || Object.values(part).every(allFinite)
}

function replyOf(spec: ModelSpec, fitted: FittedModel): ModelReply {
  const { model, judge, random } = fitted
  const level = spec.level ?? 0.95
  const type = spec.sumsOfSquares ?? 'II'
  const emptyCells = emptyIn(model)
  const answer: ModelAnswer = {
    cautions: [...fitted.cautions, ...cautionsOf(fitted, emptyCells.count)],
    rows: model.rows,
    ...meansAndContrasts(fitted, spec, level),
    emptyCells: emptyCells.empty,
    aliased: aliasedIn(model),
    confounded: [...fitted.confounded],
  }
  const { scale } = model
  const nothing = judge.nothing
  if (!random) {
    const df = model.residualDf
    const ss = model.residualSquares * scale * scale
    return {
      method: 'ols',
      ...answer,
      table: olsTable(fitted, type),
      residual:
        nothing === undefined
          ? { df, ss, sd: scale * Math.sqrt(model.residualSquares / df) }
          : { df, unavailable: nothing },
      coefficients: coefficientsOf(fitted, level),
      rSquared:
        nothing === undefined && model.rank > 1
          ? 1 - model.residualSquares / model.totalSquares
          : { unavailable: nothing ?? 'There is nothing beside the mean that could account for anything.' },
    }
  }
  const { part, fit, residual, criterion } = random
  const noSpread = { unavailable: nothing ?? 'The variances could not be worked out.' }
  const variance = residual === undefined ? undefined : residual * scale * scale
  return {
    method: 'reml',
    ...answer,
    fixed: coefficientsOf(fitted, level),
    table: remlTable(fitted, type),
    components: [
      ...part.kept.map(({ name, count }, i) => {
        const own = fit ? fit.ratios[i]! * fit.residual * scale * scale : undefined
        if (own === undefined) return { group: name, groups: count, ...noSpread }
        return { group: name, variance: own, sd: Math.sqrt(own), groups: count }
      }),
      ...part.swallowed.map(({ name, count }) => ({
        group: name,
        groups: count,
        unavailable: `The terms take up every ${name}, so its own variation cannot be seen.`,
      })),
    ],
    residual: variance === undefined ? noSpread : { variance, sd: Math.sqrt(variance) },
    remlCriterion: criterion ?? noSpread,
    singular: fit?.singular ?? false,
  }
}

/** Empty cells of the interactions that no other interaction holds. Terms without interaction need no full table. */
function emptyIn(model: LinearModel): { empty: Record<string, string>[]; count: number } {
  const held = model.terms.filter(
    (term) =>
      term.factors.length > 1 &&
      !model.terms.some(
        (it) => it !== term && it.factors.length > term.factors.length && holdsTerm(it, term),
      ),
  )
  const found: Record<string, string>[] = []
  let count = 0
  for (const term of held) {
    const own = emptyCellsOf(
      term.factors.map((it) => model.factors[it]!),
      mostEmptyCells - found.length,
    )
    found.push(...own.empty)
    count += own.count
  }
  return { empty: found, count }
}

/** Terms that are aliased wholly, by their name; of others the coefficients that are. */
function aliasedIn(model: LinearModel): string[] {
  return model.all.flatMap((term, place) => {
    const own = model.columns.flatMap((column, i) => (column.term === place ? [{ ...column, i }] : []))
    const aliased = own.filter(({ i }) => model.aliasedColumns.has(i))
    if (aliased.length === 0) return []
    return aliased.length === own.length ? [term.name] : aliased.map(({ name }) => name)
  })
}

function cautionsOf({ model, confounded }: FittedModel, emptyCells: number): string[] {
  const cautions: string[] = []
  for (const place of model.dropped)
    if (model.all[place]!.factors.length + model.all[place]!.covariates.length === 1)
      cautions.push(
        `${model.all[place]!.name} repeats other terms in these rows: what is found for those may as well be its doing.`,
      )
  if (emptyCells > 0)
    cautions.push(
      `${emptyCells} ${emptyCells === 1 ? 'cell has' : 'cells have'} no rows; tests of interactions look at the others only.`,
    )
  for (const name of confounded)
    cautions.push(
      `Each level of ${name} is one group throughout: no number of rows can judge it, more groups can.`,
    )
  if (model.residualDf > 0 && model.residualDf < 5)
    cautions.push(`Only ${model.residualDf} degrees of freedom are left to judge by.`)
  return cautions
}

function withoutAnswer(
  spec: ModelSpec,
  rows: number,
  method: 'ols' | 'reml',
  cautions: readonly string[],
  reason: string,
): ModelReply {
  const none = { unavailable: reason }
  const names = spec.meansOf ?? (spec.contrasts === undefined ? [] : (spec.factors ?? []))
  const answer: ModelAnswer = {
    cautions: [...cautions],
    rows,
    means: Object.fromEntries(names.map((name) => [name, none])),
    contrasts: spec.contrasts === undefined ? {} : Object.fromEntries(names.map((name) => [name, none])),
    emptyCells: [],
    aliased: [],
    confounded: [],
  }
  const ols: OlsReply = {
    method: 'ols',
    ...answer,
    table: none,
    residual: none,
    coefficients: none,
    rSquared: none,
  }
  const reml: RemlReply = {
    method: 'reml',
    ...answer,
    fixed: none,
    table: none,
    components: (spec.randomIntercepts ?? []).map((group) => ({ group, ...none })),
    residual: none,
    remlCriterion: none,
    singular: false,
  }
  return method === 'ols' ? ols : reml
}
