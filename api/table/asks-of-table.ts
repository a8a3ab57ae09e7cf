import { bounds, isVariable } from '#api/contract/bounds.ts'
import type { Ask, CellFault, Column, NewTable } from '#api/contract/table.ts'
import type { FactorWithLevels } from '#db/trials.ts'
import type { RawTable } from './read-table.ts'
import type { RowRead } from './row-values.ts'

type Seen = {
  readonly table: NewTable
  readonly columns: readonly Column[]
  readonly reads: readonly RowRead[]
  readonly raw: RawTable
  readonly trialFactors: readonly FactorWithLevels[]
  /** What says another level than was drawn for its place. */
  readonly otherwise: readonly CellFault[]
}

/** What a table cannot say of itself and a person is asked once: nothing is kept before the needed ones are answered. */
export function asksOf(table: NewTable, seen: Omit<Seen, 'table'>): Ask[] {
  return [
    between,
    otherOrder,
    wearOfOutcomes,
    unknownColumns,
    levelColumn,
    ownVessel,
    blankRows,
    twins,
    standard,
  ].flatMap((question) => question({ ...seen, table }) ?? [])
}

const needsWear = new Set(['dE00', 'staining', 'staining dE76', 'change grade'])
const has = (columns: readonly Column[], ...meanings: Column['as'][]) =>
  columns.some((column) => meanings.includes(column.as))
const headings = (columns: readonly Column[]) => columns.map((column) => column.heading).join(', ')

function between({ table, columns }: Seen): Ask | undefined {
  const after = columns.filter((column) => column.when === 'after' && !column.wear)
  if (after.length === 0 || table.between || has(columns, 'worn')) return undefined
  return {
    key: 'between',
    question: `What lies between before and after? ${headings(after)} were read after it.`,
    needed: true,
  }
}

function otherOrder({ table, otherwise }: Seen): Ask | undefined {
  if (table.otherOrder !== undefined || otherwise.length === 0) return undefined
  const rows = new Set(otherwise.map((it) => it.row)).size
  const say = rows === 1 ? 'One row says' : `${rows} rows say`
  return {
    key: 'otherOrder',
    question: `${say} another level than was drawn. Was it done in another order than drawn?`,
    needed: true,
  }
}

function wearOfOutcomes({ columns }: Seen): Ask | undefined {
  const open = columns.filter(
    (column) => column.as === 'outcome' && needsWear.has(column.kind ?? '') && !column.wear && !column.when,
  )
  if (open.length === 0 || has(columns, 'worn')) return undefined
  return {
    key: 'columns',
    question: `After what were these read: ${headings(open)}? A wear is never guessed.`,
    needed: true,
  }
}

function unknownColumns({ table, columns }: Seen): Ask | undefined {
  const unknown = columns.filter(
    (column) => column.as === 'ignore' && !table.columns?.some((it) => it.heading === column.heading),
  )
  if (unknown.length === 0) return undefined
  return {
    key: 'columns',
    question: `Nothing is known of ${headings(unknown)}; they are left out unless you say what they are.`,
    needed: false,
  }
}

function levelColumn({ columns, trialFactors }: Seen): Ask | undefined {
  const levelled = has(columns, 'level', 'skein') || columns.some((column) => column.level !== undefined)
  if (trialFactors.length === 0 || levelled) return undefined
  const names = trialFactors.map(({ key }) => (isVariable(key) ? bounds[key].label : key)).join(' or ')
  return { key: 'columns', question: `Which column gives the level of ${names}?`, needed: true }
}

function ownVessel({ table, columns }: Seen): Ask | undefined {
  if (table.ownVessel !== undefined || has(columns, 'vessel', 'lot', 'card', 'frame')) return undefined
  return {
    key: 'ownVessel',
    question:
      'Each piece is taken to have had its own vessel (packet, jar), and its own in the wash: was that so?',
    needed: false,
  }
}

function blankRows({ table, columns, reads }: Seen): Ask | undefined {
  if (table.blankRows !== undefined || !has(columns, 'outcome', 'L')) return undefined
  const blank = reads.filter(
    ({ values }) =>
      values.readings.length === 0 && values.outcomes.length === 0 && values.lostBecause === null,
  )
  const [first] = blank
  if (!first) return undefined
  const which = blank.length === 1 ? `Row ${first.values.row} has` : `${blank.length} rows have`
  return {
    key: 'blankRows',
    question: `${which} nothing measured. Not done yet, or lost, and why?`,
    needed: true,
  }
}

function twins({ table, columns, raw }: Seen): Ask | undefined {
  const code = columns.findIndex((column) => column.as === 'skein')
  if (code < 0 || table.twinsAreParts !== undefined) return undefined
  if (!raw.rows.some((row) => /-twin$/i.test(row.cells[code] ?? ''))) return undefined
  return {
    key: 'twinsAreParts',
    question: 'A piece called “A-twin” is taken for a part of “A”: is it?',
    needed: true,
  }
}

function standard({ table, columns }: Seen): Ask | undefined {
  if (table.standard !== undefined || !has(columns, 'vessel')) return undefined
  return {
    key: 'standard',
    question: 'Is one of the batches the standard that the others are held against? Which?',
    needed: false,
  }
}
