import type { CellFault, TableCheck } from '#api/contract/table.ts'
import type { Cell } from '#web/pages/trial/readings/paste.ts'

/** How one row stands: at fault or to be confirmed, and which of its cells. As one text, so that equal is equal. */
export type RowMark = string

/** The marks of the rows that something is said of, by the place of the row from 0. */
export function marksOf(check: TableCheck): ReadonlyMap<number, RowMark> {
  const marks = new Map<number, string[]>()
  const mark = (letter: 'f' | 'd') => (said: CellFault) => {
    const row = said.row - 1
    marks.set(row, [...(marks.get(row) ?? []), `${letter}${said.column ?? ''}`])
  }
  check.faults.forEach(mark('f'))
  check.doubts.forEach(mark('d'))
  return new Map([...marks].map(([row, letters]) => [row, letters.join(' ')]))
}

/** What a mark says of the whole row (no column) or of one cell. */
export function markAt(mark: RowMark, column?: number): 'fault' | 'doubt' | undefined {
  const letters = mark.split(' ')
  const has = (letter: string) =>
    column === undefined
      ? letters.some((it) => it.startsWith(letter))
      : letters.includes(`${letter}${column}`)
  if (has('f')) return 'fault'
  return has('d') ? 'doubt' : undefined
}

export type Mend = Cell & { readonly typed: string; readonly words: string }

/** Faults that are one and the same, said once: “Rows 16 and 17 are one skein”. */
export type FaultNote = {
  readonly title: string
  readonly detail: string
  readonly cells: readonly (Cell & { readonly heading: string | null })[]
  readonly mend: Mend | undefined
}

export function faultNotes(check: TableCheck): readonly FaultNote[] {
  const byTitle = new Map<string, CellFault[]>()
  for (const fault of check.faults) byTitle.set(fault.title, [...(byTitle.get(fault.title) ?? []), fault])
  return [...byTitle.values()].flatMap((same) => {
    const [first] = same
    if (first === undefined) return []
    const mended = same.find((fault) => fault.suggestion !== null && fault.column !== null)
    return {
      title: first.title,
      detail: first.detail,
      cells: same.flatMap(({ row, column, heading }) =>
        column === null ? [] : [{ row: row - 1, column, heading }],
      ),
      mend: mended === undefined ? undefined : mendOf(mended, check),
    }
  })
}

function mendOf({ row, column, suggestion }: CellFault, check: TableCheck): Mend | undefined {
  if (column === null || suggestion === null) return undefined
  const isPlace = check.columns[column]?.as === 'place'
  const shown = suggestion.replace(/^-(?=\d)/, '−')
  return {
    row: row - 1,
    column,
    typed: suggestion,
    words: isPlace ? `Row ${row} is place ${suggestion}` : `Make it ${shown}`,
  }
}
