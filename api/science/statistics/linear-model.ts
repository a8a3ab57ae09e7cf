import {
  type Coding,
  type Covariate,
  columnsOfTerm,
  type DesignColumn,
  designColumns,
  intercept,
  termMatrix,
} from './design-matrix.ts'
import { type Cells, cellsOf } from './design-matrix-cells.ts'
import { type Factored, factorised } from './least-squares.ts'
import type { Coded } from './model-columns.ts'
import { holdsTerm, type Term } from './model-terms.ts'

/** What a linear model is made of. `terms` do not name the intercept; it is always there. */
export type LinearModelParts = {
  readonly terms: readonly Term[]
  readonly factors: readonly Coded[]
  readonly covariates: readonly Covariate[]
}

/**
 * A linear model fitted by least squares. Everything is told in `rank` orthonormal directions: a mean or a
 * coefficient is a vector there, its estimate a product with `effects`, its variance its squared length.
 */
export type LinearModel = LinearModelParts & {
  readonly rows: number
  /** Terms with the intercept first; `columns` name their places here. */
  readonly all: readonly Term[]
  readonly columns: readonly DesignColumn[]
  readonly cells: Cells
  readonly design: Factored
  readonly rank: number
  /** Places of terms that say nothing beside those before them, and what is made of them. */
  readonly dropped: ReadonlySet<number>
  readonly aliasedColumns: ReadonlySet<number>
  /** The response is `origin + scale · value`. */
  readonly origin: number
  readonly scale: number
  readonly effects: Float64Array
  readonly residualDf: number
  /** Sums of squares of the scaled values: what is left, and about the mean. */
  readonly residualSquares: number
  readonly totalSquares: number
  /** True when what is left is no more than the rounding of the numbers. */
  readonly exact: boolean
  /** Scaled residual of every row. */
  readonly residuals: Float64Array
  /** Logarithm of the determinant of X′X, X in treatment coding with covariates as they came. */
  readonly logDeterminant: number
}

/** Above this many multiplications a model is not begun: it would hold up everybody else. */
const mostWork = 2e9

/**
 * Fits a linear model by Householder QR on the distinct rows of the design, each weighted by its count.
 *
 * @throws RangeError when the model is too large to be fitted in a few seconds
 *
 * @example
 * const parts = { terms: [], factors: [], covariates: [] }
 * linearModel(parts, Float64Array.of(1, 3, 5)).residualDf // 2
 */
export function linearModel(parts: LinearModelParts, response: Float64Array): LinearModel {
  const { factors, covariates } = parts
  const all = [intercept, ...parts.terms]
  const rows = response.length
  const levelCounts = factors.map((it) => it.levels.length)
  const width = all.reduce((sum, term) => sum + columnsOfTerm(term, levelCounts), 0)
  const cells = cellsOf(rows, factors, covariates)
  const height = cells.counts.length
  if (height * width * Math.min(height, width) + all.length * width ** 3 > mostWork || height * width > 2e7)
    throw new RangeError(
      `this model has ${width} columns for ${height} different rows, more than can be worked out here`,
    )
  const columns = designColumns(all, factors, covariates)
  const design = factorised(weighted(all, cells, parts, 'treatment'), height, width)
  const aliasedColumns = new Set(design.pivot.slice(design.rank))

  const { origin, scale, means, values, pure } = summed(response, cells)
  const turned = means.map((mean, cell) => mean * Math.sqrt(cells.counts[cell]!))
  design.turn(turned)
  const effects = turned.slice(0, design.rank)
  const fitted = fittedCells(design, effects)
  const residuals = values.map((value, row) => {
    const cell = cells.of[row]!
    return value - fitted[cell]! / Math.sqrt(cells.counts[cell]!)
  })
  let left = 0
  for (let i = design.rank; i < height; i++) left += turned[i]! ** 2
  const residualDf = rows - design.rank
  const residualSquares = residualDf > 0 ? left + pure : 0
  const mean = values.reduce((sum, value) => sum + value, 0) / rows
  const totalSquares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  // A decimal number is held to one part in 10^16 of its size, and the sums to a little more.
  const rounding = scale > 0 ? 4e-16 * Math.max(1, Math.abs(origin) / scale) + 2e-15 : 0
  const exact = !(residualSquares > rows * (2 * rounding) ** 2)

  let logDeterminant = 0
  for (let k = 0; k < design.rank; k++) {
    const column = design.pivot[k]!
    logDeterminant += 2 * Math.log(Math.abs(design.coordinates[column * design.rank + k]!))
    for (const it of columns[column]!.covariates) logDeterminant += 2 * Math.log(covariates[it]!.scale)
  }
  return {
    ...parts,
    rows,
    all,
    columns,
    cells,
    design,
    rank: design.rank,
    dropped: droppedTerms(all, columns, aliasedColumns),
    aliasedColumns,
    origin,
    scale,
    effects,
    residualDf,
    residualSquares,
    totalSquares,
    exact,
    residuals,
    logDeterminant,
  }
}

/**
 * All columns at every cell, each times the root of the cell's count.
 *
 * @example
 * const cells = { shown: Int32Array.of(0), counts: Float64Array.of(4) }
 * const mean = { name: '(Intercept)', factors: [], covariates: [] }
 * Array.from(weighted([mean], cells, { factors: [], covariates: [] }, 'treatment')) // [2]
 */
export function weighted(
  terms: readonly Term[],
  cells: Cells,
  { factors, covariates }: LinearModelParts,
  coding: Coding,
): Float64Array {
  const blocks = terms.map((term) => termMatrix(term, cells.shown, factors, covariates, coding))
  const matrix = new Float64Array(blocks.reduce((sum, block) => sum + block.length, 0))
  const height = cells.counts.length
  let at = 0
  for (const block of blocks)
    for (let i = 0; i < block.length; i++) matrix[at++] = block[i]! * Math.sqrt(cells.counts[i % height]!)
  return matrix
}

/** The response less its first value (so that no digits are lost), scaled, with cell means and what is within cells. */
function summed(response: Float64Array, cells: Cells) {
  const origin = response[0]!
  let scale = 0
  for (const value of response) scale = Math.max(scale, Math.abs(value - origin))
  const values = response.map((value) => (scale > 0 ? (value - origin) / scale : 0))
  const means = new Float64Array(cells.counts.length)
  for (let i = 0; i < values.length; i++) means[cells.of[i]!]! += values[i]!
  for (let cell = 0; cell < means.length; cell++) means[cell]! /= cells.counts[cell]!
  let pure = 0
  for (let i = 0; i < values.length; i++) pure += (values[i]! - means[cells.of[i]!]!) ** 2
  return { origin, scale, values, means, pure }
}

function fittedCells(design: Factored, effects: Float64Array): Float64Array {
  const fitted = new Float64Array(design.rows)
  fitted.set(effects)
  design.turnBack(fitted)
  return fitted
}

/** A single factor or covariate that is wholly aliased leaves the model, and its interactions with it. */
function droppedTerms(
  terms: readonly Term[],
  columns: readonly DesignColumn[],
  aliased: ReadonlySet<number>,
): ReadonlySet<number> {
  const dropped = new Set<number>()
  terms.forEach((term, place) => {
    if (term.factors.length + term.covariates.length !== 1) return
    const own = columns.flatMap((column, i) => (column.term === place ? [i] : []))
    if (own.length > 0 && own.every((i) => aliased.has(i))) dropped.add(place)
  })
  terms.forEach((term, place) => {
    if ([...dropped].some((it) => holdsTerm(term, terms[it]!))) dropped.add(place)
  })
  return dropped
}

/**
 * The vector in the model's directions that stands for a weighted sum of coefficients, or nothing when the rows
 * cannot tell it (it hangs on a cell that is empty, or on columns that cannot be told apart).
 *
 * @example
 * const model = linearModel({ terms: [], factors: [], covariates: [] }, Float64Array.of(1, 3))
 * inDirections(model, Float64Array.of(1))[0] ** 2 // 0.5
 */
export function inDirections(model: LinearModel, weights: Float64Array): Float64Array | undefined {
  const { design, rank } = model
  const vector = new Float64Array(rank)
  for (let k = 0; k < rank; k++) {
    const at = design.pivot[k]! * rank
    let sum = weights[design.pivot[k]!]!
    for (let i = 0; i < k; i++) sum -= design.coordinates[at + i]! * vector[i]!
    vector[k] = sum / design.coordinates[at + k]!
  }
  const length = Math.sqrt(vector.reduce((sum, it) => sum + it * it, 0))
  for (const column of model.aliasedColumns) {
    if (model.dropped.has(model.columns[column]!.term)) continue
    let told = 0
    let size = 0
    for (let i = 0; i < rank; i++) {
      const coordinate = design.coordinates[column * rank + i]!
      told += coordinate * vector[i]!
      size += coordinate * coordinate
    }
    if (Math.abs(told - weights[column]!) > 1e-8 * (length * Math.sqrt(size) + 1)) return undefined
  }
  return vector
}
