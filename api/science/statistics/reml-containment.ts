import { type Covariate, columnsOfTerm, termMatrix } from './design-matrix.ts'
import { factorised } from './least-squares.ts'
import { rankOfGram } from './matrix-cholesky.ts'
import type { Coded } from './model-columns.ts'
import type { Term } from './model-terms.ts'
import type { Groups, RemlSums } from './reml-sums.ts'

type Fixed = {
  readonly terms: readonly Term[]
  readonly factors: readonly Coded[]
  readonly covariates: readonly Covariate[]
}

/**
 * Degrees of freedom of each term by the unit it was given to: of the coarsest groups within which the term does not
 * vary, their number less the rank of all that does not vary within them (terms, and coarser groups); where it
 * varies within all groups, the rows less the rank of fixed and random columns together. Used where a variance is
 * estimated as zero: then Satterthwaite's rule would turn skeins into replicates.
 *
 * @example
 * const fixed = { terms: [{ name: '', factors: [], covariates: [] }], factors: [], covariates: [] }
 * containmentDf(fixed, [{ name: 'pot', of: Int32Array.of(0, 0, 1, 1, 2, 2), count: 3 }], {}) // [2]
 */
export function containmentDf(fixed: Fixed, groups: readonly Groups[], sums: RemlSums): number[] {
  const order = groups.map((_, i) => i).sort((a, b) => groups[a]!.count - groups[b]!.count)
  const ofGroups = new Map<number, number>()
  let within: number | undefined
  return fixed.terms.map((term) => {
    const coarsest = order.find((i) => isConstantIn(groups[i]!, term, fixed))
    if (coarsest === undefined) {
      within ??= sums.rows - rankTogether(sums)
      return within
    }
    const known = ofGroups.get(coarsest)
    if (known !== undefined) return known
    const df = groups[coarsest]!.count - rankConstant(groups, coarsest, fixed)
    ofGroups.set(coarsest, df)
    return df
  })
}

/**
 * Whether nothing that a term is made of changes within a group.
 *
 * @example
 * const pot = { name: 'pot', of: Int32Array.of(0, 0, 1, 1), count: 2 }
 * const steam = { name: 'steam', levels: ['10', '20'], codes: Int32Array.of(0, 0, 1, 1) }
 * isConstantIn(pot, { name: 'steam', factors: [0], covariates: [] }, { factors: [steam], covariates: [] }) // true
 */
export function isConstantIn(
  groups: Groups,
  term: Term,
  { factors, covariates }: Pick<Fixed, 'factors' | 'covariates'>,
): boolean {
  return (
    term.factors.every((it) => same(groups, factors[it]!.codes)) &&
    term.covariates.every((it) => same(groups, covariates[it]!.values))
  )
}

/**
 * Whether a column has one value within each group.
 *
 * @example
 * same({ name: 'pot', of: Int32Array.of(0, 0, 1), count: 2 }, Int32Array.of(4, 5, 6)) // false
 */
export function same(groups: Groups, values: Int32Array | Float64Array): boolean {
  const first = firstRows(groups)
  return values.every((value, row) => values[first[groups.of[row]!]!] === value)
}

function firstRows(groups: Groups): Int32Array {
  const first = new Int32Array(groups.count).fill(-1)
  groups.of.forEach((group, row) => {
    if (first[group] === -1) first[group] = row
  })
  return first
}

function rankConstant(groups: readonly Groups[], place: number, fixed: Fixed): number {
  const own = groups[place]!
  const first = firstRows(own)
  const levelCounts = fixed.factors.map((it) => it.levels.length)
  const blocks: Float64Array[] = []
  for (const term of fixed.terms) {
    if (!isConstantIn(own, term, fixed) || columnsOfTerm(term, levelCounts) === 0) continue
    blocks.push(termMatrix(term, first, fixed.factors, fixed.covariates, 'treatment'))
  }
  groups.forEach((other, i) => {
    if (i === place || other.count >= own.count || !same(own, other.of)) return
    const block = new Float64Array(own.count * other.count)
    first.forEach((row, group) => {
      block[other.of[row]! * own.count + group] = 1
    })
    blocks.push(block)
  })
  const matrix = new Float64Array(blocks.reduce((sum, block) => sum + block.length, 0))
  let at = 0
  for (const block of blocks) {
    matrix.set(block, at)
    at += block.length
  }
  return factorised(matrix, own.count, matrix.length / own.count).rank
}

/** The rank of the fixed columns and all groups together: the main groups, and what is left of the rest beside them. */
function rankTogether({ total, bySize, width, groups, main }: RemlSums): number {
  const size = width - 1
  const gram = new Float64Array(size * size)
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < size; k++) {
      let value = total[i * width + k]!
      for (const it of bySize) value -= it.squares[i * width + k]! / it.size
      // What rounding leaves of a column that the main groups hold whole is nothing.
      gram[i * size + k] = i === k && value < 1e-10 * total[i * width + i]! ? 0 : value
    }
  }
  return groups[main]!.count + rankOfGram(gram, size)
}
