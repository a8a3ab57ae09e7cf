import { Problem } from '#api/contract/problem.ts'
import type { Ask, CellFault, Column, NewTable, TableCheck } from '#api/contract/table.ts'
import type { KnownPiece } from '#db/known-pieces.ts'
import type { FactorWithLevels } from '#db/trials.ts'
import { asksOf } from './asks-of-table.ts'
import { breather } from './breathe.ts'
import { factorsOfTable, mappedColumns } from './columns-of-table.ts'
import { measuredBefore, otherThanDrawn } from './known-before.ts'
import { notesOf } from './notes-of-rows.ts'
import { pieceCodes } from './piece-codes.ts'
import { readRow } from './read-row.ts'
import { type RawTable, readTableCells, readTableText } from './read-table.ts'
import { repeatedPieces } from './repeated-pieces.ts'
import type { RowRead, RowValues, TableFactor } from './row-values.ts'

/** A table read by its map: what can be kept, what cannot and why, and what has to be asked first. */
export type CheckedTable = {
  readonly columns: readonly Column[]
  readonly factors: ReadonlyMap<string, TableFactor>
  /** The rows without a fault; some may have doubts that were not kept yet. */
  readonly good: readonly RowValues[]
  readonly faults: readonly CellFault[]
  readonly doubts: readonly CellFault[]
  readonly asks: readonly Ask[]
  readonly notes: TableCheck['notes']
  readonly rows: number
}

const mostSaid = 200
/** With more the map is wrong, not the cells. */
const mostCellsAtFault = 20_000

/** Reads and checks a table against the trial that it is for; nothing is stored. */
export async function checkTable(
  table: NewTable,
  {
    factors: trialFactors,
    raw: readBefore,
    taken = new Set(),
    known: find = async () => new Map(),
    seen = () => {},
  }: {
    factors: readonly FactorWithLevels[]
    /** The table taken apart, where that was done before. */
    raw?: RawTable
    /** The codes of the pieces that the trial has already, and what is known of some. */
    taken?: ReadonlySet<string>
    known?: (codes: readonly string[]) => Promise<ReadonlyMap<string, KnownPiece>>
    seen?: (rows: number, of: number) => void
  },
): Promise<CheckedTable> {
  const raw = readBefore ?? (await rawTable(table))
  const columns = mappedColumns(raw, table.columns, trialFactors)
  const factors = factorsOfTable(columns, raw, trialFactors)
  const reads: RowRead[] = []
  // A long table lets others be answered in between.
  const breathe = breather()
  let atFaultSoFar = 0
  for (const [i, row] of raw.rows.entries()) {
    const read = readRow(row, i + 1, { columns, factors, answers: table })
    reads.push(read)
    atFaultSoFar += read.faults.length
    if (atFaultSoFar > mostCellsAtFault) throw tooManyFaults(reads)
    if (i % 2000 === 1999) seen(i + 1, raw.rows.length)
    await breathe()
  }
  const rows = reads.map((read) => read.values)
  const codeOf = pieceCodes(rows, taken)
  await breathe()
  const met = [...new Set(rows.map(codeOf))].filter((code) => taken.has(code))
  const known = met.length === 0 ? new Map<string, KnownPiece>() : await find(met)
  await breathe()
  const faults = [...reads.flatMap((read) => read.faults), ...repeatedPieces(rows, columns)]
  await breathe()
  // A row that is another’s double differs from the plan only because its place is wrong.
  const faulty = new Set(faults.map((fault) => fault.row))
  const sound = rows.filter((row) => !faulty.has(row.row))
  const otherwise = otherThanDrawn(sound, { codeOf, known, columns })
  if (table.otherOrder === false) faults.push(...otherwise)
  await breathe()
  const asks = asksOf(table, { columns, reads, raw, trialFactors, otherwise })
  const atFault = new Set(faults.map((fault) => fault.row))
  const good = reads.filter((read) => !atFault.has(read.values.row))
  const doubts = openDoubts(
    good.flatMap((read) => read.doubts),
    table.doubtsKept,
  )
  await breathe()
  const inDecimals = inDecimalsOf(raw)
  return {
    columns,
    factors,
    good: good.map((read) => read.values),
    faults: faults.map(inDecimals).sort((a, b) => a.row - b.row),
    doubts,
    asks,
    notes: [...measuredBefore(rows, codeOf, known), ...notesOf(reads, columns)],
    rows: raw.rows.length,
  }
}

/** How a checked table is told. */
export function presentCheck(checked: CheckedTable, makes: TableCheck['makes']): TableCheck {
  return {
    rows: checked.rows,
    ready: rowsToKeep(checked, 'ready').length,
    atFault: checked.rows - checked.good.length,
    doubtful: new Set(checked.doubts.map((doubt) => doubt.row)).size,
    columns: [...checked.columns],
    asks: [...checked.asks],
    faults: checked.faults.slice(0, mostSaid),
    faultsInAll: checked.faults.length,
    doubts: checked.doubts.slice(0, mostSaid),
    doubtsInAll: checked.doubts.length,
    notes: checked.notes,
    makes,
  }
}

/** All good rows, doubts or not; or by choice those alone that raise no doubt that was not kept. */
export function rowsToKeep(checked: CheckedTable, keep: NewTable['keep']): readonly RowValues[] {
  if (keep === 'all') return checked.good
  const doubtful = new Set(checked.doubts.map((doubt) => doubt.row))
  return checked.good.filter((row) => !doubtful.has(row.row))
}

function openDoubts(doubts: readonly CellFault[], kept: NewTable['doubtsKept']): readonly CellFault[] {
  if (kept === true) return []
  if (!kept) return doubts
  const looked = new Set(kept.map(({ row, column }) => `${row} ${column}`))
  return doubts.filter(({ row, column }) => !looked.has(`${row} ${column}`))
}

/** “Make it 46.0” in a column of one decimal, not 46. */
function inDecimalsOf({ rows }: RawTable): (fault: CellFault) => CellFault {
  const decimals = (text: string | undefined) => /^[−-]?\d+[.,](\d+)$/.exec(text ?? '')?.[1]?.length ?? 0
  const usualOf = new Map<number, number>()
  const usualIn = (column: number): number => {
    const known = usualOf.get(column)
    if (known !== undefined) return known
    const usual = Math.max(...rows.slice(0, 50).map((row) => decimals(row.cells[column]?.trim())))
    usualOf.set(column, usual)
    return usual
  }
  return (fault) => {
    const { column, suggestion } = fault
    if (column === null || suggestion === null || !/^-?\d+(?:\.\d+)?$/.test(suggestion)) return fault
    const usual = Math.min(100, usualIn(column))
    if (usual <= decimals(suggestion)) return fault
    const meant = Number(suggestion).toFixed(usual)
    const detail = fault.detail.replace(`Did you mean ${suggestion}?`, `Did you mean ${meant}?`)
    return { ...fault, suggestion: meant, detail }
  }
}

function tooManyFaults(reads: readonly RowRead[]): Problem {
  return new Problem('at-fault', 'This table cannot be read.', [
    {
      pointer: '#/text',
      detail: `More than 20,000 cells of the first ${reads.length} rows cannot be kept. Do the columns mean what the map says?`,
    },
  ])
}

/** The table taken apart, before anything is held for it. */
export async function rawTable(table: NewTable): Promise<RawTable> {
  if (table.text !== undefined) return readTableText(table.text)
  if (table.cells !== undefined) return readTableCells(table.cells)
  throw new Problem('at-fault', 'There is no table in this request.', [
    {
      pointer: '#/text',
      detail: 'Send the table as text (CSV, or cells pasted from a spreadsheet) or as cells.',
    },
  ])
}

/** How many of each record the ready rows make, and which levels. */
export function levelsMet(checked: CheckedTable): { factor: string; levels: string[]; isNew: boolean }[] {
  const met = new Map<string, Map<string, number | null>>()
  for (const row of checked.good) {
    for (const level of row.levels) {
      const labels = met.get(level.factor) ?? new Map<string, number | null>()
      met.set(level.factor, labels.set(level.label, level.value))
    }
  }
  for (const column of checked.columns) {
    if (column.level === undefined) continue
    const factor = column.factor ?? 'remedy'
    const labels = met.get(factor) ?? new Map<string, number | null>()
    met.set(factor, labels.set(column.level, null))
  }
  return [...met].map(([factor, labels]) => {
    const known = checked.factors.get(factor)
    const sorted = [...labels]
    if (known?.kind === 'number') sorted.sort(([, a], [, b]) => (a ?? 0) - (b ?? 0))
    return { factor, levels: sorted.map(([label]) => label), isNew: known?.isNew ?? true }
  })
}
