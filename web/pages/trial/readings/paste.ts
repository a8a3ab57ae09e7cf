import { useEffect, useRef, useState } from 'preact/hooks'
import type { Column, TableCheck } from '#api/contract/table.ts'
import { checkTable, type TableSent } from '#web/api/table.ts'
import { type Pasted, tableIn, textOf } from '#web/pages/trial/readings/table-text.ts'
import { newId } from '#web/state/new-id.ts'

/** What an import asks for once, for all rows. */
export type Answers = Pick<
  TableSent,
  | 'between'
  | 'ownVessel'
  | 'otherOrder'
  | 'blankRows'
  | 'standard'
  | 'twinsAreParts'
  | 'method'
  | 'instrumentId'
>
export type Cell = { readonly row: number; readonly column: number }

/** A table that is being matched and mended; nothing of it is kept yet. */
export type Paste = {
  readonly table: Pasted | undefined
  /** What the API says of the table; while it is asked again, what it said last. */
  readonly check: TableCheck | undefined
  readonly checking: boolean
  readonly refused: unknown
  readonly answers: Answers
  /** Read a text and begin to match it; an empty one takes everything back. */
  readonly begin: (text: string) => void
  /** Go on with a table, such as the rows that were left out. */
  readonly goOn: (table: Pasted) => void
  readonly type: (cells: readonly (Cell & { readonly typed: string })[]) => void
  readonly mean: (column: Column) => void
  readonly answer: (said: { readonly [Key in keyof Answers]: Answers[Key] | undefined }) => void
  /** Doubts that were looked at and kept: these, or all. */
  readonly keepDoubts: (cells: readonly Cell[] | 'all') => void
  /** What would be sent to keep it. The id stays until something is changed, so that trying again is harmless. */
  readonly sent: () => TableSent
}

type Draft = {
  readonly id: string
  readonly table: Pasted | undefined
  readonly columns: readonly Column[]
  readonly answers: Answers
  readonly looked: readonly Cell[] | true
}

const nothing: Draft = { id: '', table: undefined, columns: [], answers: {}, looked: [] }

export function usePaste(trialId: string): Paste {
  const [draft, setDraft] = useState(nothing)
  const [said, setSaid] = useState<{ of?: Draft; check?: TableCheck; refused?: unknown }>({})
  const rows = draft.table?.rows.length ?? 0

  useEffect(() => {
    if (draft.table === undefined) {
      setSaid({})
      return
    }
    const leaving = new AbortController()
    const ask = () =>
      checkTable(trialId, sentOf(draft), leaving.signal).then(
        (check) => setSaid({ of: draft, check }),
        (refused: unknown) => {
          if (!leaving.signal.aborted)
            setSaid(({ check }) => ({ of: draft, refused, ...(check ? { check } : {}) }))
        },
      )
    // A pause in the typing; a long table waits longer, for it is sent whole.
    const timer = setTimeout(() => void ask(), said.of === undefined ? 0 : Math.min(1500, 250 + rows / 40))
    return () => {
      clearTimeout(timer)
      leaving.abort()
    }
  }, [trialId, draft])

  // Several changes may come before the next drawing; each is made to what the one before left.
  const latest = useRef(draft)
  const change = (make: (draft: Draft) => Partial<Draft>) => {
    latest.current = { ...latest.current, ...make(latest.current), id: newId() }
    setDraft(latest.current)
  }
  const begin = (table: Pasted | undefined) => change(() => ({ ...nothing, table }))

  return {
    table: draft.table,
    check: said.check,
    checking: said.of !== draft,
    refused: said.refused,
    answers: draft.answers,
    begin: (text) => {
      setSaid({})
      begin(text === '' ? undefined : tableIn(text))
    },
    goOn: (table) => {
      setSaid({})
      change(() => ({ table, looked: [] }))
    },
    type: (cells) =>
      change(({ table, looked }) => ({
        table: table === undefined ? undefined : typedInto(table, cells),
        looked: looked === true ? true : looked.filter((it) => !cells.some((cell) => isSame(it, cell))),
      })),
    mean: (column) =>
      change(({ columns }) => ({
        columns: [...columns.filter((it) => it.heading !== column.heading), column],
      })),
    answer: (given) =>
      change(({ answers }) => ({ answers: withoutBlanks({ ...answers, ...given }) as Answers })),
    keepDoubts: (cells) =>
      change(({ looked }) => ({ looked: cells === 'all' || looked === true ? true : [...looked, ...cells] })),
    sent: () => sentOf(draft),
  }
}

function sentOf({ id, table, columns, answers, looked }: Draft): TableSent {
  if (table === undefined) return {}
  return {
    id,
    ...(table.headings.length < 2
      ? { cells: [table.headings, ...table.rows].map((cells) => [...cells]) }
      : { text: textOf(table) }),
    ...(columns.length === 0 ? {} : { columns: [...columns] }),
    ...answers,
    doubtsKept: looked === true ? true : looked.map(({ row, column }) => ({ row: row + 1, column })),
  }
}

function typedInto(table: Pasted, cells: readonly (Cell & { readonly typed: string })[]): Pasted {
  const rows = [...table.rows]
  for (const { row, column, typed } of cells) {
    const changed = [...(rows[row] ?? [])]
    changed[column] = typed
    rows[row] = changed
  }
  return { ...table, rows }
}

const isSame = (a: Cell, b: Cell) => a.row === b.row && a.column === b.column

function withoutBlanks(answers: object): object {
  return Object.fromEntries(Object.entries(answers).filter(([, answer]) => answer !== undefined))
}
