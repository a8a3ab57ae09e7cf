import { type Kysely, type Selectable, sql } from 'kysely'
import { Problem } from '#api/contract/problem.ts'
import { newId } from './new-id.ts'
import { isSame, type PlainTable } from './rows.ts'
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
  /** How many of them were not there before. */
  readonly madeN: number
}

/**
 * Writes many rows at once, all or nothing when `tx` is a transaction, in the order sent. The same row under the same
 * id is harmless; a different one is refused, with a pointer that begins with `at` of its place.
 *
 * @param options.derived Columns that we worked out: they do not make a repeat different.
 * @param options.fresh   The ids were made just now: nothing can stand under them, and what was sent is given back.
 */
export async function addRows<T extends PlainTable>(
  tx: Kysely<Database>,
  table: T,
  sent: readonly NewRow<T>[],
  {
    at = (index: number) => `#/items/${index}`,
    derived = [],
    fresh = false,
  }: { at?: (index: number) => string; derived?: readonly string[]; fresh?: boolean | undefined } = {},
): Promise<Added<T>> {
  const rows = sent.map((row) => ({ ...row, id: (row as { id?: string }).id ?? newId() }))
  refuseTwice(rows, at)
  if (fresh) {
    await insertRows(tx, table, rows)
    return { rows: rows as unknown as Selectable<Database[T]>[], madeN: rows.length }
  }
  const made = new Map<string, Row>()
  for (let from = 0; from < rows.length; from += chunk) {
    const part = rows.slice(from, from + chunk)
    for (const row of await insert(tx, table, part, { repeatable: true })) made.set(String(row.id), row)
  }
  if (made.size < rows.length) {
    const before = await rowsUnder(
      tx,
      table,
      rows.map((row) => row.id).filter((id) => !made.has(id)),
    )
    for (const [index, row] of rows.entries()) {
      if (made.has(row.id)) continue
      const kept = before.get(row.id)
      const other = Object.keys(row).find(
        (key) =>
          !derived.includes(key) &&
          (row as Row)[key] !== undefined &&
          !isSame((row as Row)[key], kept?.[key]),
      )
      if (kept && !other) continue
      throw new Problem('already-there', `Something else already stands under the id ${row.id}.`, [
        {
          pointer: `${at(index)}/${other ?? 'id'}`,
          detail: 'This differs from what is kept under the same id.',
        },
      ])
    }
    const all = rows.map((row) => made.get(row.id) ?? before.get(row.id))
    return { rows: all as Selectable<Database[T]>[], madeN: made.size }
  }
  return { rows: rows.map((row) => made.get(row.id)) as Selectable<Database[T]>[], madeN: made.size }
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
async function insert(
  tx: Kysely<Database>,
  table: keyof Database,
  rows: readonly Row[],
  { repeatable = false }: { repeatable?: boolean },
): Promise<Row[]> {
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
  const { rows: made } = await sql<Row>`${inserted} on conflict (id) do nothing returning *`.execute(tx)
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

async function rowsUnder(tx: Kysely<Database>, table: PlainTable, ids: readonly string[]) {
  const { rows } =
    await sql<Row>`select * from ${sql.table(table)} where id = any(${[...ids]}::uuid[])`.execute(tx)
  return new Map(rows.map((row) => [String(row.id), row]))
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
