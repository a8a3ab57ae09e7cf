import { bounds, isVariable } from '#api/contract/bounds.ts'
import { Problem } from '#api/contract/problem.ts'
import type { Ask, CellFault, Column, NewTable, TableCheck } from '#api/contract/table.ts'
import type { KnownPiece } from '#db/known-pieces.ts'
import type { FactorWithLevels } from '#db/trials.ts'
import { guessColumns, headingParts } from './guess-columns.ts'
import { contradictions, measuredBefore } from './known-before.ts'
import { pieceCodes } from './piece-codes.ts'
import { type RowRead, type RowValues, readRow, type TableFactor } from './read-row.ts'
import { type RawTable, readTableCells, readTableText } from './read-table.ts'
import { repeatedPieces } from './repeated-pieces.ts'

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

/** Reads and checks a table against the trial that it is for; nothing is stored. */
export async function checkTable(
  table: NewTable,
  {
    factors: trialFactors,
    taken = new Set(),
    known: find = async () => new Map(),
    seen = () => {},
  }: {
    factors: readonly FactorWithLevels[]
    /** The codes of the pieces that the trial has already, and what is known of some. */
    taken?: ReadonlySet<string>
    known?: (codes: readonly string[]) => Promise<ReadonlyMap<string, KnownPiece>>
    seen?: (rows: number, of: number) => void
  },
): Promise<CheckedTable> {
  const raw = rawTable(table)
  const columns = mappedColumns(raw, table.columns, trialFactors)
  const factors = factorsOfTable(columns, raw, trialFactors)
  const reads: RowRead[] = []
  for (const [i, row] of raw.rows.entries()) {
    reads.push(readRow(row, i + 1, { columns, factors, answers: table }))
    if (i % 2000 !== 1999) continue
    seen(i + 1, raw.rows.length)
    // A long table lets others be answered in between.
    await breath()
  }
  const rows = reads.map((read) => read.values)
  const codeOf = pieceCodes(rows, taken)
  const met = [...new Set(rows.map(codeOf))].filter((code) => taken.has(code))
  const known = met.length === 0 ? new Map<string, KnownPiece>() : await find(met)
  const faults = [...reads.flatMap((read) => read.faults), ...repeatedPieces(rows, columns)]
  // A row that is another’s double contradicts the plan only because its place is wrong.
  const faulty = new Set(faults.map((fault) => fault.row))
  const sound = rows.filter((row) => !faulty.has(row.row))
  faults.push(...contradictions(sound, { codeOf, known, columns }))
  const asks = asksOf(table, { columns, reads, raw, trialFactors })
  const atFault = new Set(faults.map((fault) => fault.row))
  const good = reads.filter((read) => !atFault.has(read.values.row))
  const doubts = openDoubts(
    good.flatMap((read) => read.doubts),
    table.doubtsKept,
  )
  return {
    columns,
    factors,
    good: good.map((read) => read.values),
    faults: faults.map((fault) => inDecimalsOf(raw, fault)).sort((a, b) => a.row - b.row),
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
function inDecimalsOf({ rows }: RawTable, fault: CellFault): CellFault {
  const { column, suggestion } = fault
  if (column === null || suggestion === null || !/^-?\d+(?:\.\d+)?$/.test(suggestion)) return fault
  const decimals = (text: string | undefined) => /^[−-]?\d+[.,](\d+)$/.exec(text ?? '')?.[1]?.length ?? 0
  const usual = Math.max(...rows.slice(0, 50).map((row) => decimals(row.cells[column]?.trim())))
  if (usual <= decimals(suggestion)) return fault
  const meant = Number(suggestion).toFixed(usual)
  const detail = fault.detail.replace(`Did you mean ${suggestion}?`, `Did you mean ${meant}?`)
  return { ...fault, suggestion: meant, detail }
}

const breath = () => new Promise<void>((resolve) => setImmediate(resolve))

function rawTable(table: NewTable): RawTable {
  if (table.text !== undefined) return readTableText(table.text)
  if (table.cells !== undefined) return readTableCells(table.cells)
  throw new Problem('at-fault', 'There is no table in this request.', [
    {
      pointer: '#/text',
      detail: 'Send the table as text (CSV, or cells pasted from a spreadsheet) or as cells.',
    },
  ])
}

/** The columns in the order of the table: those that the map names as it says, the rest as guessed. */
function mappedColumns(
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

function factorsOfTable(
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

type Seen = {
  readonly columns: readonly Column[]
  readonly reads: readonly RowRead[]
  readonly raw: RawTable
  readonly trialFactors: readonly FactorWithLevels[]
}

const needsWear = new Set(['dE00', 'staining', 'staining dE76', 'change grade'])

function asksOf(table: NewTable, { columns, reads, raw, trialFactors }: Seen): Ask[] {
  const asks: Ask[] = []
  const after = columns.filter((column) => column.when === 'after' && !column.wear)
  if (after.length > 0 && !table.between && !columns.some((column) => column.as === 'worn')) {
    asks.push({
      key: 'between',
      question: `What lies between before and after? ${after.map((column) => column.heading).join(', ')} were read after it.`,
      needed: true,
    })
  }
  const open = columns.filter(
    (column) => column.as === 'outcome' && needsWear.has(column.kind ?? '') && !column.wear && !column.when,
  )
  if (open.length > 0 && !columns.some((column) => column.as === 'worn')) {
    asks.push({
      key: 'columns',
      question: `After what were these read: ${open.map((column) => column.heading).join(', ')}? A wear is never guessed.`,
      needed: true,
    })
  }
  const unknown = columns.filter(
    (column) => column.as === 'ignore' && !table.columns?.some((it) => it.heading === column.heading),
  )
  if (unknown.length > 0) {
    asks.push({
      key: 'columns',
      question: `Nothing is known of ${unknown.map((column) => column.heading).join(', ')}; they are left out unless you say what they are.`,
      needed: false,
    })
  }
  const levelled = columns.some((column) => column.as === 'level' || column.level !== undefined)
  if (trialFactors.length > 0 && !levelled && !columns.some((column) => column.as === 'skein')) {
    const names = trialFactors
      .map((factor) => (isVariable(factor.key) ? bounds[factor.key].label : factor.key))
      .join(' or ')
    asks.push({ key: 'columns', question: `Which column gives the level of ${names}?`, needed: true })
  }
  if (
    !columns.some(
      (column) =>
        column.as === 'vessel' || column.as === 'lot' || column.as === 'card' || column.as === 'frame',
    ) &&
    table.ownVessel === undefined
  ) {
    asks.push({
      key: 'ownVessel',
      question:
        'Each piece is taken to have had its own vessel (packet, jar), and its own in the wash: was that so?',
      needed: false,
    })
  }
  const blank = reads.filter(
    ({ values }) =>
      values.readings.length === 0 && values.outcomes.length === 0 && values.lostBecause === null,
  )
  if (
    blank.length > 0 &&
    table.blankRows === undefined &&
    columns.some((column) => column.as === 'outcome' || column.as === 'L')
  ) {
    asks.push({
      key: 'blankRows',
      question: `${blank.length === 1 ? `Row ${blank[0]?.values.row} has` : `${blank.length} rows have`} nothing measured. Not done yet, or lost, and why?`,
      needed: true,
    })
  }
  const code = columns.findIndex((column) => column.as === 'skein')
  if (
    code >= 0 &&
    table.twinsAreParts === undefined &&
    raw.rows.some((row) => /-twin$/i.test(row.cells[code] ?? ''))
  ) {
    asks.push({
      key: 'twinsAreParts',
      question: 'A piece called “A-twin” is taken for a part of “A”: is it?',
      needed: true,
    })
  }
  if (columns.some((column) => column.as === 'vessel') && table.standard === undefined) {
    asks.push({
      key: 'standard',
      question: 'Is one of the batches the standard that the others are held against? Which?',
      needed: false,
    })
  }
  return asks
}

function notesOf(reads: readonly RowRead[], columns: readonly Column[]): TableCheck['notes'] {
  const notes: { title: string; text: string }[] = []
  const blanks = reads.flatMap((read) =>
    read.blanks.map(({ column }) => ({ row: read.values.row, column, of: read.values })),
  )
  const single = blanks.filter(({ of }) => of.readings.length > 0 || of.outcomes.length > 0)
  for (const { row, column } of single.slice(0, 3)) {
    notes.push({
      title: `Row ${row}, ${columns[column]?.heading ?? ''}: blank`,
      text: 'Kept as not recorded, never as zero.',
    })
  }
  if (single.length > 3)
    notes.push({
      title: `${single.length - 3} more blank cells`,
      text: 'Each is kept as not recorded, never as zero.',
    })
  const commas = reads.flatMap((read) => read.commas)
  if (commas.length > 0) {
    const [first, second] = commas
    const read = (text: string) => text.replace(',', '.')
    const shown =
      second === undefined
        ? `${first} is read as ${read(first ?? '')}.`
        : `${first} and ${second} are read as ${read(first ?? '')} and ${read(second)}.`
    notes.push({ title: 'Commas', text: shown })
  }
  return notes
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
