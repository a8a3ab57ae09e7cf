import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { floorInWords, holdsTable } from '#web/pages/method/calibration-tables.ts'

type Results = {
  readonly trials: number
  readonly seed: number
  readonly pots: { readonly skeins: number }
  readonly coverage: unknown
  readonly columns: readonly string[]
  readonly cells: readonly (readonly number[])[]
}

const json = (path: string) => JSON.parse(readFileSync(new URL(path, import.meta.url), 'utf8'))
const results: Results = json('../../../calibrate/results.json')
const shown = json('../../../../web/pages/method/calibration.json')

const column = (name: string): number => {
  const place = results.columns.indexOf(name)
  if (place < 0) throw new Error(`The study has no column “${name}”.`)
  return place
}
const cells = (wanted: Readonly<Record<string, number>>) =>
  results.cells.filter((cell) =>
    Object.entries(wanted).every(([name, value]) => cell[column(name)] === value),
  )
const asShown = (wanted: Readonly<Record<string, number>>) =>
  cells(wanted).map((cell) => (shown.columns as string[]).map((name) => cell[column(name)]))

test('the figures on the page of the method are those of the kept study', () => {
  expect(shown).toEqual({
    trials: results.trials,
    seed: results.seed,
    skeinsPerPot: results.pots.skeins,
    worst: Math.max(
      ...cells({ extra: 1 })
        .filter((cell) => (cell[column('floor')] ?? 1) < 0.4)
        .map((cell) => cell[column('rule')] ?? 1),
    ),
    columns: ['sessions', 'floor', 'rule', 'fourTwins', 'raw', 'everySession'],
    falseHolds: asShown({ extra: 1, lost: 0, referenceLoss: 0 }),
    trueHolds: asShown({ extra: 0, lost: 0, referenceLoss: 1 }),
    coverage: results.coverage,
  })
})

test('every noise floor of the study has words', () => {
  const floors = [...new Set(results.cells.map((cell) => cell[column('floor')] ?? Number.NaN))]
  expect(floors.length).toBeGreaterThan(2)
  for (const floor of floors) expect(floorInWords(floor)).not.toMatch(/\d/)
})

test('the table has a cell for every head', () => {
  const { head, rows } = holdsTable(shown.falseHolds)
  expect(rows.length).toBe(16)
  for (const { cells: row } of rows) expect(row.length).toBe(head.length)
})
