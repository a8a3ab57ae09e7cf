import type { CellFault } from '#api/contract/table.ts'
import type { Wear } from '#api/contract/wear.ts'

/** A factor as the table meets it: one of the trial, or one that the table brings. */
export type TableFactor = {
  readonly key: string
  readonly label: string
  readonly kind: 'number' | 'category'
  readonly levels: readonly { readonly label: string; readonly value: number | null }[]
  /** The table may bring levels of its own. */
  readonly isNew: boolean
}

export type LevelValue = { readonly factor: string; readonly label: string; readonly value: number | null }
export type ReadingValue = { readonly wear: Wear; readonly l: number; readonly a: number; readonly b: number }
export type OutcomeValue = {
  readonly kind: string
  readonly value: number
  readonly text: string | null
  readonly unit: string | null
  readonly fibre: string | null
  readonly wear: Wear
  readonly of: 'skein' | 'vessel' | 'part'
  readonly level: string | null
  readonly role: 'dark twin' | null
}

/** One row, read and converted, not yet laid out as records. */
export type RowValues = {
  readonly row: number
  readonly line: number
  readonly session: string | null
  readonly place: string | null
  readonly skein: string | null
  readonly vessel: string | null
  readonly lot: string | null
  readonly card: string | null
  readonly equipment: string | null
  readonly item: string | null
  readonly frame: string | null
  readonly base: string | null
  readonly massG: number | null
  readonly lostBecause: string | null
  readonly levels: readonly LevelValue[]
  readonly readings: readonly ReadingValue[]
  readonly outcomes: readonly OutcomeValue[]
  readonly conditions: Readonly<Record<string, number>>
  /** The wear that a column of its own counts, such as the number of washes. */
  readonly worn: Wear | null
}

export type RowRead = {
  readonly values: RowValues
  readonly faults: CellFault[]
  readonly doubts: CellFault[]
  readonly blanks: { readonly column: number }[]
  readonly commas: readonly string[]
}
