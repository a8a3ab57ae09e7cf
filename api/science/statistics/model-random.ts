import type { LinearModel } from './linear-model.ts'
import { columnsNamed, groupColumn } from './model-columns.ts'
import type { ModelRow } from './model-spec.ts'
import { isConstantIn } from './reml-containment.ts'
import type { FixedPart, Groups } from './reml-sums.ts'

/** What becomes of the random intercepts that were asked for. */
export type RandomPart = {
  /** Those that can be estimated. */
  readonly kept: readonly Groups[]
  /** Those that the fixed terms take up wholly: a treatment that is one vessel. */
  readonly swallowed: readonly Groups[]
  readonly cautions: readonly string[]
}

/**
 * The groups of each random intercept, without those that group nothing.
 *
 * @example
 * randomPart([{ pot: 1 }, { pot: 1 }, { pot: 2 }], ['pot']).kept[0].count // 2
 */
export function randomPart(
  rows: readonly ModelRow[],
  names: readonly string[],
): Omit<RandomPart, 'swallowed'> {
  const kept: Groups[] = []
  const cautions: string[] = []
  for (const name of names) {
    const columns = columnsNamed(name, (it) => rows.some((row) => Object.hasOwn(row, it))) ?? []
    const { codes, levels } = groupColumn(rows, name, columns)
    const groups: Groups = { name, of: codes, count: levels.length }
    const same = kept.find((it) => it.count === groups.count && sameGroups(it, groups))
    if (groups.count === rows.length)
      cautions.push(`${name} is left out: it has one row per group, so the rows are the units.`)
    else if (groups.count === 1)
      cautions.push(`${name} is left out: it is one group only, and what is found holds for that one.`)
    else if (same) cautions.push(`${name} is left out: it makes the same groups as ${same.name}.`)
    else kept.push(groups)
  }
  return { kept, cautions }
}

/** Two numberings from 0 in the order of the rows make the same groups when they are the same numbers. */
function sameGroups(a: Groups, b: Groups): boolean {
  return a.of.every((group, row) => group === b.of[row])
}

/**
 * The fixed part of a model as REML takes it. Every row of a cell shares one place in the model's directions.
 *
 * @example
 * const cells = { of: Int32Array.of(0, 0), counts: [2] }
 * const model = { rank: 1, rows: 2, cells, design: { rows: 1, directions: () => [1] }, residuals: [-1, 1] }
 * Array.from(fixedPartOf(model).atCell) // [0.7071]
 */
export function fixedPartOf(model: LinearModel): FixedPart {
  const { design, rank, cells, rows, residuals } = model
  const directions = design.directions()
  const atCell = new Float64Array(design.rows * rank)
  for (let cell = 0; cell < design.rows; cell++)
    for (let k = 0; k < rank; k++)
      atCell[cell * rank + k] = directions[k * design.rows + cell]! / Math.sqrt(cells.counts[cell]!)
  return { rows, rank, cellOf: cells.of, atCell, residuals }
}

/**
 * Whether the fixed terms take up a random intercept wholly, so that nothing of it is left to be seen.
 *
 * @example
 * const vessel = { name: 'vessel', of: [0, 1], count: 2 }
 * isSwallowed(vessel, { rows: 2, rank: 2, cellOf: [0, 1], atCell: [1, 0, 0, 1] }) // true
 */
export function isSwallowed(groups: Groups, { rows, rank, cellOf, atCell }: FixedPart): boolean {
  const sums = new Float64Array(groups.count * rank)
  for (let row = 0; row < rows; row++) {
    const at = groups.of[row]! * rank
    const cell = cellOf[row]! * rank
    for (let k = 0; k < rank; k++) sums[at + k]! += atCell[cell + k]!
  }
  const taken = sums.reduce((sum, it) => sum + it * it, 0)
  return rows - taken < 1e-9 * rows
}

/**
 * Terms whose every level (or combination of levels) is one group of a random intercept: nothing tells such a
 * treatment from the vessel that it was given to.
 *
 * @example
 * const steam = { name: 'steam', levels: ['10', '20'], codes: Int32Array.of(0, 1, 0, 1) }
 * const all = [{ name: 'steam', factors: [0], covariates: [] }]
 * const model = { all, factors: [steam], covariates: [], dropped: new Set(), rows: 4 }
 * confoundedTerms(model, [{ name: 'pot', of: Int32Array.of(0, 1, 0, 1), count: 2 }]).get(0) // 'pot'
 */
export function confoundedTerms(model: LinearModel, groups: readonly Groups[]): Map<number, string> {
  const found = new Map<number, string>()
  model.all.forEach((term, place) => {
    if (term.factors.length === 0 || term.covariates.length > 0 || model.dropped.has(place)) return
    for (const it of groups) {
      if (!isConstantIn(it, term, model)) continue
      const cells = new Set<string>()
      for (let row = 0; row < model.rows; row++)
        cells.add(term.factors.map((factor) => model.factors[factor]!.codes[row]).join())
      if (cells.size === it.count && cells.size > 1) found.set(place, it.name)
    }
  })
  return found
}
