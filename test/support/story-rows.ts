import { readFileSync } from 'node:fs'
import { parse } from 'csv-parse/sync'

/** The rows of one of the sample trials, every cell as the text that stands in the file. */
export function storyRows(file: string): Record<string, string>[] {
  const csv = readFileSync(new URL(`../../db/sample-trials/${file}`, import.meta.url), 'utf8')
  return parse(csv, { columns: true, skip_empty_lines: true }) as Record<string, string>[]
}

/** The cell of a story as a number; blank is not recorded. Grades as in "3-4" are halves. */
export function numberIn(row: Record<string, string>, column: string): number | undefined {
  const cell = row[column]?.trim() ?? ''
  if (cell === '') return undefined
  const halves = /^([1-4])-([2-5])$/.exec(cell)
  return halves ? Number(halves[1]) + 0.5 : Number(cell)
}

/** The cell as a number that must be there. */
export function figureIn(row: Record<string, string>, column: string): number {
  const value = numberIn(row, column)
  if (value === undefined || Number.isNaN(value)) throw new Error(`No number stands in ${column}.`)
  return value
}
