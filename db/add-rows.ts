import { type Kysely, type Selectable, sql } from 'kysely'
import { Problem } from '#api/contract/problem.ts'
import { newId } from './new-id.ts'
import { isSame, type PlainTable, rowsUnder } from './rows.ts'
import type { Database } from './tables.ts'

type Given<Value> = Value extends Date ? Date | string : Value
/** A row as it is written: columns of JSON as they are, moments as text. What every row leaves out, the database fills in. */
export type NewRow<T extends PlainTable> = {
  readonly [Column in keyof Selectable<Database[T]>]?: Given<Selectable<Database[T]>[Column]> | undefined
}

const chunk = 5000

export type Added<T extends PlainTable> = {
  /** In the order in which they were sent. */
  readonly rows: Selectable<Database[T]>[]
  /** The ids of those that were not there before. */
  readonly madeIds: ReadonlySet<string>
}

/**
 * Writes many rows at once, all or nothing when `tx` is a transaction, in the order sent. The same row under the same
 * id is harmless; a different one is refused, with a pointer that begins with `at` of its place.
 *
 * @param options.derived Columns that we worked out: they do not make a repeat different.
 */
export async function addRows<T extends PlainTable>(
  tx: Kysely<Database>,
  table: T,
  sent: readonly NewRow<T>[],
  {
    at = (index: number) => `#/items/${index}`,
    derived = [],
  }: { at?: (index: number) => string; derived?: readonly string[] } = {},
): Promise<Added<T>> {
  const rows = sent.map((row): Row & { id: string } => ({ ...row, id: String(idIn(row) ?? newId()) }))
  refuseTwice(rows, at)
  const kept = new Map<string, Selectable<Database[T]>>()
  for (let from = 0; from < rows.length; from += chunk) {
    for (const row of await insert(tx, table, rows.slice(from, from + chunk), { repeatable: true }))
      kept.set(String(idIn(row)), row)
  }
  const madeIds = new Set(kept.keys())
  if (madeIds.size < rows.length) {
    const others = rows.map((row) => row.id).filter((id) => !madeIds.has(id))
    for (const row of await rowsUnder(tx, table, others)) kept.set(String(idIn(row)), row)
  }
  const inOrder = rows.map((row, index) => {
    const before = kept.get(row.id)
    const other = madeIds.has(row.id) ? undefined : differenceOf(row, before, derived)
    if (before && other === undefined) return before
    throw new Problem('already-there', `Something else already stands under the id ${row.id}.`, [
      {
        pointer: `${at(index)}/${other ?? 'id'}`,
        detail: 'This differs from what is kept under the same id.',
      },
    ])
  })
  return { rows: inOrder, madeIds }
}

function idIn(row: object): unknown {
  return 'id' in row ? row.id : undefined
}

/** The first column in which what was sent differs from what is kept. */
function differenceOf(row: Row, before: object | undefined, derived: readonly string[]): string | undefined {
  const kept = new Map<string, unknown>(Object.entries(before ?? {}))
  return Object.keys(row).find(
    (key) => !derived.includes(key) && row[key] !== undefined && !isSame(row[key], kept.get(key)),
  )
}

/** Writes many new rows and gives nothing back: for derived rows and whole tables. */
export async function insertRows(
  tx: Kysely<Database>,
  table: keyof Database,
  rows: readonly object[],
): Promise<void> {
  for (let from = 0; from < rows.length; from += chunk)
    await insert(tx, table, rows.slice(from, from + chunk) as Row[], {})
}

type Row = Record<string, unknown>

/** One statement and one parameter, however many rows: the types of the columns are the table's own. */
async function insert<T extends keyof Database>(
  tx: Kysely<Database>,
  table: T,
  rows: readonly Row[],
  { repeatable = false }: { repeatable?: boolean },
): Promise<Selectable<Database[T]>[]> {
  const keys = new Set<string>(['id'])
  for (const row of rows) for (const key in row) if (row[key] !== undefined) keys.add(key)
  const columns = [...keys].map((key) => sql.ref(key))
  const body = JSON.stringify(
    rows.map((row) => snakeKeys(row.id === undefined ? { ...row, id: newId() } : row)),
  )
  // Rows of one statement share their moment; a microsecond each keeps the order in which they were sent.
  const inserted = sql`insert into ${sql.table(table)} (${sql.join(columns)}, created_at)
    select ${sql.join(columns.map((column) => sql`it.${column}`))}, now() + it.ordinality * interval '1 microsecond'
    from rows from (jsonb_populate_recordset(null::${sql.table(table)}, ${body}::jsonb)) with ordinality as it`
  if (!repeatable) {
    await inserted.execute(tx)
    return []
  }
  const { rows: made } = await sql<
    Selectable<Database[T]>
  >`${inserted} on conflict (id) do nothing returning *`.execute(tx)
  return made
}

function snakeKeys(row: Row): Row {
  const snake: Row = {}
  for (const key in row) if (row[key] !== undefined) snake[snakeOf(key)] = row[key]
  return snake
}

const known = new Map<string, string>()
function snakeOf(key: string): string {
  const before = known.get(key)
  if (before !== undefined) return before
  const snake = key.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`)
  known.set(key, snake)
  return snake
}

function refuseTwice(rows: readonly { id: string }[], at: (index: number) => string): void {
  const seen = new Set<string>()
  for (const [index, { id }] of rows.entries()) {
    if (seen.has(id)) {
      throw new Problem('at-fault', 'One id stands for one record.', [
        { pointer: `${at(index)}/id`, detail: 'This id was sent twice.' },
      ])
    }
    seen.add(id)
  }
}
