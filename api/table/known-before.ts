import type { CellFault, Column, TableCheck } from '#api/contract/table.ts'
import type { KnownPiece } from '#db/known-pieces.ts'
import type { PieceCode } from './piece-codes.ts'
import type { RowValues } from './row-values.ts'

/**
 * Rows that say another level than the one that their piece was given when its place was drawn. Which of the two was
 * done only a person knows: it is asked, and nothing is suggested.
 */
export function otherThanDrawn(
  rows: readonly RowValues[],
  {
    codeOf,
    known,
    columns,
  }: {
    codeOf: PieceCode
    known: ReadonlyMap<string, KnownPiece>
    columns: readonly Column[]
  },
): CellFault[] {
  return rows.flatMap((row) => {
    const code = codeOf(row)
    const piece = known.get(code)
    if (!piece) return []
    return row.levels.flatMap((level) => {
      const given = piece.given.filter((it) => it.factor === level.factor)
      const [first] = given
      if (!first || given.some((it) => it.label === level.label)) return []
      const column = columns.findIndex((it) => it.as === 'level' && it.factor === level.factor)
      const heading = columns[column]?.heading ?? null
      return {
        row: row.row,
        line: row.line,
        column: column < 0 ? null : column,
        heading,
        read: level.label,
        title: `Row ${row.row}, ${heading ?? level.factor}: ${level.label}`,
        detail: `Skein ${code} was given ${first.label} by the plan. Correct the row, or keep what the table says.`,
        suggestion: null,
      }
    })
  })
}

/** Said where pieces of the table were measured before: the same table once more would count everything twice. */
export function measuredBefore(
  rows: readonly RowValues[],
  codeOf: PieceCode,
  known: ReadonlyMap<string, KnownPiece>,
): TableCheck['notes'] {
  const codes = new Set(rows.map(codeOf).filter((code) => known.get(code)?.measured))
  if (codes.size === 0) return []
  const [some] = codes
  return [
    {
      title: codes.size === 1 ? `Skein ${some} has readings` : `${codes.size} of these skeins have readings`,
      text: 'These rows are added to them as further readings. If this is the same table once more, leave it.',
    },
  ]
}
