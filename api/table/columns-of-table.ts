import { bounds, isVariable } from '#api/contract/bounds.ts'
import { Problem } from '#api/contract/problem.ts'
import type { Column } from '#api/contract/table.ts'
import type { FactorWithLevels } from '#db/trials.ts'
import { guessColumns, headingParts } from './guess-columns.ts'
import type { RawTable } from './read-table.ts'
import type { TableFactor } from './row-values.ts'

/** The columns in the order of the table: those that the map names as it says, the rest as guessed. */
export function mappedColumns(
  raw: RawTable,
  map: readonly Column[] | undefined,
  factors: readonly FactorWithLevels[],
): Column[] {
  const guessed = guessColumns(
    raw.headings,
    factors.map((factor) => ({
      key: factor.key,
      label: isVariable(factor.key) ? bounds[factor.key].label : factor.key,
    })),
  )
  if (!map) return guessed
  const faults = map.flatMap((column, i) => {
    const found = []
    if (!raw.headings.includes(column.heading.trim()))
      found.push({
        pointer: `#/columns/${i}/heading`,
        detail: `The table has no column “${column.heading}”. It has ${raw.headings.join(', ')}.`,
      })
    if (column.as === 'level' && !column.factor)
      found.push({
        pointer: `#/columns/${i}/factor`,
        detail: 'Say of which factor this column gives the level, such as steamTime.',
      })
    if (column.as === 'condition' && !(column.key && isVariable(column.key)))
      found.push({
        pointer: `#/columns/${i}/key`,
        detail: 'A condition needs the key of the table of variables.',
      })
    return found
  })
  if (faults.length > 0) throw new Problem('at-fault', 'The map does not fit the table.', faults)
  const byHeading = new Map(map.map((column) => [column.heading.trim(), column]))
  return guessed.map((guess) => {
    const said = byHeading.get(guess.heading)
    const { unit } = headingParts(guess.heading)
    return said === undefined ? guess : { ...(unit === undefined ? {} : { unit }), ...said }
  })
}

/** The factors whose levels a table gives: those of the trial, and those that it brings. */
export function factorsOfTable(
  columns: readonly Column[],
  raw: RawTable,
  trialFactors: readonly FactorWithLevels[],
): ReadonlyMap<string, TableFactor> {
  const factors = new Map<string, TableFactor>()
  for (const factor of trialFactors) {
    factors.set(factor.key, {
      key: factor.key,
      label: isVariable(factor.key) ? bounds[factor.key].label : factor.key,
      kind: factor.kind,
      levels: factor.levels.map(({ label, value }) => ({ label, value })),
      isNew: false,
    })
  }
  for (const [i, column] of columns.entries()) {
    const key =
      column.as === 'level'
        ? column.factor
        : column.level !== undefined
          ? (column.factor ?? 'remedy')
          : undefined
    if (!key || factors.has(key)) continue
    const cells = raw.rows.map((row) => row.cells[i] ?? '').filter((cell) => cell !== '')
    const isNumber =
      isVariable(key) || (column.as === 'level' && cells.every((cell) => /^\d+(?:[.,]\d+)?$/.test(cell)))
    factors.set(key, {
      key,
      label: isVariable(key) ? bounds[key].label : key,
      kind: isNumber ? 'number' : 'category',
      levels: [],
      isNew: true,
    })
  }
  return factors
}
