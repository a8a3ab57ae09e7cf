import type { RowValues } from './row-values.ts'

/** How the rows of a table name their pieces: rows of one code are one piece. */
export type PieceCode = (values: RowValues) => string

/**
 * The code of a row's piece: the one it gives, else session and place, else session and row. A code that comes back in
 * every batch (“1, 2, 3” in each) is told apart by its vessel or session; in a table of repeated readings it is not.
 * A piece that the table does not name is never taken for one that the trial has already.
 *
 * @param taken The codes of the trial’s own pieces.
 */
export function pieceCodes(
  rows: readonly RowValues[],
  taken: { has(code: string): boolean; readonly size: number } = new Set(),
): PieceCode {
  const repeated = rows.some((row) => row.frame !== null || row.worn !== null)
  const given = rows.filter((row) => row.skein !== null)
  const plain = new Set(given.map((row) => row.skein)).size
  const scoped = new Set(given.map((row) => `${scopeOf(row)}\u0001${row.skein}`)).size
  const needsScope = !repeated && plain < given.length && scoped > plain
  const unnamed = taken.size === 0 ? [] : rows.filter(isUnnamed)
  let offset = 0
  while (unnamed.some((row) => taken.has(numbered(row, offset)))) offset += taken.size
  return (row) => {
    if (row.skein !== null) return needsScope && scopeOf(row) ? `${scopeOf(row)}-${row.skein}` : row.skein
    if (row.item !== null) return row.card === null ? row.item : `${row.item} ${row.card}`
    const lot = lotLabel(row)
    if (lot !== null) return lot
    if (row.place !== null) return placed(row.session, row.place, taken)
    return numbered(row, offset)
  }
}

const isUnnamed = (row: RowValues) =>
  row.skein === null && row.item === null && row.lot === null && row.place === null

/** Place 3 of “Session 1”, “run 1” and “1” is the same piece where the plan drew one under that name. */
function placed(session: string | null, place: string, taken: { has(code: string): boolean }): string {
  if (session === null) return place
  const plain = `${/(?<!\d)\d+$/.exec(session)?.[0] ?? session}-${place}`
  return taken.has(plain) ? plain : `${session}-${place}`
}

const numbered = (row: RowValues, offset: number) =>
  row.session === null ? String(row.row + offset) : `${row.session}-${row.row + offset}`

function scopeOf(row: RowValues): string {
  return row.vessel ?? row.card ?? row.session ?? ''
}

/** A lot’s letter means little alone: “oat A” is told from “brick A” by the level that stands beside it. */
export function lotLabel(row: RowValues): string | null {
  if (row.lot === null) return null
  const beside = row.levels.map((level) => level.label).join(' ')
  return beside ? `${beside} ${row.lot}` : row.lot
}
