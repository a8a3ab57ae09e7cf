import type { LinearModel } from './linear-model.ts'

/** A mean that is asked for: its factors' places, and the level of each. */
export type MeanAt = ReadonlyMap<number, number>

/**
 * Every combination of the levels of some factors, the first running fastest.
 *
 * @example
 * meansAsked({ factors: [{ levels: ['10', '20'] }] }, [0]).map((at) => at.get(0)) // [0, 1]
 */
export function meansAsked(model: LinearModel, factors: readonly number[]): MeanAt[] {
  let all: [number, number][][] = [[]]
  for (const factor of factors)
    all = model.factors[factor]!.levels.flatMap((_, level) =>
      all.map((at) => [...at, [factor, level] as [number, number]]),
    )
  return all.map((at) => new Map(at))
}

/**
 * A factor among these that only repeats what others say: its levels have no means of their own.
 *
 * @example
 * const all = [{ name: '', factors: [], covariates: [] }, { name: 'b', factors: [0], covariates: [] }]
 * repeatedAmong({ all, dropped: new Set([1]) }, [0]) // 'b'
 */
export function repeatedAmong(model: LinearModel, factors: readonly number[]): string | undefined {
  const place = model.all.findIndex(
    (term, i) =>
      model.dropped.has(i) &&
      term.factors.length === 1 &&
      term.covariates.length === 0 &&
      factors.includes(term.factors[0]!),
  )
  return place < 0 ? undefined : model.all[place]!.name
}

/**
 * Weights of the coefficients in an estimated marginal mean: the factors named at their levels, all cells of the other
 * factors weighed equally, covariates at their mean. Not the raw mean of the rows: an unbalanced table does not pull it.
 *
 * Source: Searle, Speed and Milliken (1980), The American Statistician 34, 216–221 (population marginal means).
 *
 * @example
 * const columns = [
 *   { term: 0, levels: new Map(), covariates: [] },
 *   { term: 1, levels: new Map([[0, 1]]), covariates: [] },
 * ]
 * const model = { columns, dropped: new Set(), factors: [{ levels: ['10', '20'] }] }
 * Array.from(marginalMeanWeights(model, new Map())) // [1, 0.5]
 */
export function marginalMeanWeights(model: LinearModel, at: MeanAt): Float64Array {
  return Float64Array.from(model.columns, (column) => {
    // Covariates are centred, so at their mean they add nothing.
    if (column.covariates.length > 0 || model.dropped.has(column.term)) return 0
    let weight = 1
    for (const [factor, level] of column.levels) {
      const wanted = at.get(factor)
      if (wanted === undefined) weight /= model.factors[factor]!.levels.length
      else if (wanted !== level) return 0
    }
    return weight
  })
}

/**
 * Weights that give one coefficient as it is named: covariates as they came, not centred. Where a covariate is part of
 * an interaction, what its centring moved into simpler terms is moved back.
 *
 * @example
 * const columns = [
 *   { term: 0, levels: new Map(), covariates: [] },
 *   { term: 1, levels: new Map(), covariates: [0] },
 * ]
 * const model = { columns, dropped: new Set(), covariates: [{ centre: 4, scale: 2 }] }
 * Array.from(coefficientWeights(model, 0)) // [1, -2]
 */
export function coefficientWeights(model: LinearModel, place: number): Float64Array {
  const wanted = model.columns[place]!
  return Float64Array.from(model.columns, (column) => {
    if (model.dropped.has(column.term) || column.levels.size !== wanted.levels.size) return 0
    for (const [factor, level] of wanted.levels) if (column.levels.get(factor) !== level) return 0
    if (!wanted.covariates.every((it) => column.covariates.includes(it))) return 0
    return column.covariates.reduce((weight, it) => {
      const { centre, scale } = model.covariates[it]!
      return wanted.covariates.includes(it) ? weight / scale : (weight * -centre) / scale
    }, 1)
  })
}
