import { columnsOfTerm } from './design-matrix.ts'
import { factorised } from './least-squares.ts'
import { type LinearModel, weighted } from './linear-model.ts'
import { holdsTerm } from './model-terms.ts'

/**
 * The directions in which a term is judged (orthonormal, each `rank` long), or why it cannot be. `contrasts` span the
 * same space: the joint degrees of freedom of a mixed model hang a little on how a term is split into single contrasts,
 * and these are the ones of its coding.
 */
export type Hypothesis =
  | { readonly directions: readonly Float64Array[]; readonly contrasts: readonly Float64Array[] }
  | { readonly unavailable: string }

/**
 * What each term's test looks at, in the model's directions. Type II: the term beside every term that does not hold
 * it. Type III: the term beside all others, levels weighed equally (sum coding).
 *
 * Sources: Searle (1987), Linear Models for Unbalanced Data, chapters 9 and 12; SAS Technical Report R-101 (1978), the four
 * types of estimable functions.
 *
 * @example
 * const all = [{ name: '', factors: [], covariates: [] }, { name: 'steam', factors: [0], covariates: [] }]
 * const design = { coordinates: Float64Array.of(1, 0, 0.5, 0.5) }
 * const model = { all, design, rank: 2, dropped: new Set(), factors: [{ levels: ['10', '20'] }] }
 * hypothesesOf(model, 'II')[1].directions.length // 1
 */
export function hypothesesOf(model: LinearModel, type: 'II' | 'III'): readonly Hypothesis[] {
  const { all, rank } = model
  const treatment = blocksOf(model, model.design.coordinates)
  const blocks = type === 'II' ? treatment : blocksOf(model, sumCoordinates(model))
  return all.map((term, place): Hypothesis => {
    if (model.dropped.has(place))
      return { unavailable: `In these rows ${term.name} only repeats what the terms before it say.` }
    const held = all.some((it, other) => other !== place && !model.dropped.has(other) && holdsTerm(it, term))
    const alone = all.length === 2
    const own = held || alone ? blocks[place]! : treatment[place]!
    const width = own.length / rank
    if (width === 0)
      return { unavailable: `${term.name} has one level only, so there is nothing to compare.` }
    const others = blocks.filter((_, other) => {
      if (other === place || model.dropped.has(other)) return false
      return type === 'III' || !holdsTerm(all[other]!, term)
    })
    const { directions, triangle } = besideOthers(others, own, rank)
    const found = directions.length
    if (found === 0) return { unavailable: `In these rows ${term.name} cannot be told from the other terms.` }
    if (type === 'III' && held && found < width)
      return {
        unavailable: `Cells without rows leave no test of ${term.name} that weighs all cells equally.`,
      }
    // A term that no other holds is split into its coefficients, the others each direction beside those before it.
    const whole = !held && !alone && found === width
    const shares = whole ? upperInverse(triangle, found) : diagonalInverse(triangle, found)
    const contrasts = directions.map((_, i) =>
      combined(directions, shares.subarray(i * found, (i + 1) * found)),
    )
    return { directions, contrasts }
  })
}

/** What a term's columns add to the others: directions, and the columns' coordinates in them (row by row). */
function besideOthers(others: readonly Float64Array[], own: Float64Array, rank: number) {
  const before = others.reduce((sum, block) => sum + block.length, 0) / rank
  const width = own.length / rank
  const matrix = new Float64Array((before + width) * rank)
  let at = 0
  for (const block of [...others, own]) {
    matrix.set(block, at)
    at += block.length
  }
  const beside = factorised(matrix, rank, before + width)
  const q = beside.directions()
  const places = Array.from({ length: beside.rank }, (_, k) => k).filter((k) => beside.pivot[k]! >= before)
  const triangle = new Float64Array(places.length ** 2)
  places.forEach((k, i) => {
    places.forEach((column, c) => {
      triangle[i * places.length + c] = beside.coordinates[beside.pivot[column]! * beside.rank + k]!
    })
  })
  return { directions: places.map((k) => q.slice(k * rank, (k + 1) * rank)), triangle }
}

function upperInverse(triangle: Float64Array, size: number): Float64Array {
  const inverse = new Float64Array(size * size)
  for (let c = 0; c < size; c++) {
    inverse[c * size + c] = 1 / triangle[c * size + c]!
    for (let i = c - 1; i >= 0; i--) {
      let sum = 0
      for (let k = i + 1; k <= c; k++) sum -= triangle[i * size + k]! * inverse[k * size + c]!
      inverse[i * size + c] = sum / triangle[i * size + i]!
    }
  }
  return inverse
}

function diagonalInverse(triangle: Float64Array, size: number): Float64Array {
  const inverse = new Float64Array(size * size)
  for (let i = 0; i < size; i++) inverse[i * size + i] = 1 / triangle[i * size + i]!
  return inverse
}

function combined(directions: readonly Float64Array[], shares: Float64Array): Float64Array {
  const vector = new Float64Array(directions[0]!.length)
  directions.forEach((direction, i) => {
    for (let k = 0; k < vector.length; k++) vector[k]! += shares[i]! * direction[k]!
  })
  return vector
}

function blocksOf(model: LinearModel, coordinates: Float64Array): Float64Array[] {
  const levelCounts = model.factors.map((it) => it.levels.length)
  let at = 0
  return model.all.map((term) => {
    const size = columnsOfTerm(term, levelCounts) * model.rank
    at += size
    return coordinates.slice(at - size, at)
  })
}

function sumCoordinates(model: LinearModel): Float64Array {
  const matrix = weighted(model.all, model.cells, model, 'sum')
  const height = model.cells.counts.length
  const columns = matrix.length / height
  const coordinates = new Float64Array(columns * model.rank)
  for (let column = 0; column < columns; column++) {
    const vector = matrix.slice(column * height, (column + 1) * height)
    model.design.turn(vector)
    coordinates.set(vector.subarray(0, model.rank), column * model.rank)
  }
  return coordinates
}
