import type { CellFault, Column } from '#api/contract/table.ts'
import { groupBy } from '#api/science/group-by.ts'
import { pieceCodes } from './piece-codes.ts'
import type { RowValues } from './row-values.ts'

/**
 * Rows that would be one piece read twice in one state: both are at fault, with the place that is free as what was
 * probably meant. In a table with a column for frames or washes a piece may come back, in another frame or wear.
 */
export function repeatedPieces(rows: readonly RowValues[], columns: readonly Column[]): CellFault[] {
  const codeOf = pieceCodes(rows)
  const met = new Map<string, RowValues[]>()
  for (const row of rows) {
    const worn = row.worn === null ? '' : JSON.stringify(row.worn)
    const key = `${codeOf(row)}\u0001${row.frame ?? ''}\u0001${worn}`
    const same = met.get(key)
    if (same) same.push(row)
    else met.set(key, [row])
  }
  const faults: CellFault[] = []
  const column = columns.findIndex((it) => it.as === 'place' || it.as === 'skein')
  const freePlace = freePlaces(rows)
  for (const same of met.values()) {
    const [first] = same
    if (!first || same.length < 2) continue
    const free = freePlace(first)
    const title = `Rows ${inARow(same.map((row) => row.row))} are one skein`
    const detail = `${saidBy(first, codeOf(first), same.length)}${free === undefined ? '' : ` No row is place ${free}.`}`
    const last = same.at(-1)
    for (const row of same) {
      faults.push({
        row: row.row,
        line: row.line,
        column: column < 0 ? null : column,
        heading: columns[column]?.heading ?? null,
        read: row.place ?? row.skein ?? codeOf(row),
        title,
        detail,
        suggestion: row === last && free !== undefined ? free : null,
      })
    }
  }
  return faults
}

/** The numbers of a few rows, or of the first few and how many more. */
function inARow(numbers: readonly number[]): string {
  if (numbers.length > 8) return `${numbers.slice(0, 6).join(', ')} and ${numbers.length - 6} more`
  return `${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`
}

function saidBy(row: RowValues, code: string, times: number): string {
  const say = times === 2 ? 'Both say' : 'All say'
  if (row.skein === null && row.place !== null) {
    return row.session === null
      ? `${say} place ${row.place}.`
      : `${say} session ${row.session}, place ${row.place}.`
  }
  return `${times === 2 ? 'Both' : 'All'} are “${code}”.`
}

/** The one number missing among the places of a session, where exactly one is. */
function freePlaces(rows: readonly RowValues[]): (of: RowValues) => string | undefined {
  const bySession = groupBy(rows, (row) => row.session)
  return ({ session, place, skein }) => {
    const mine = bySession.get(session) ?? []
    if (place === null || skein !== null || mine.length > 200) return undefined
    const places = new Set(mine.map((row) => Number(row.place)))
    if ([...places].some((it) => !Number.isInteger(it))) return undefined
    const missing = mine.map((_, i) => i + 1).filter((it) => !places.has(it))
    return missing.length === 1 ? String(missing[0]) : undefined
  }
}
