import type { Insertable, Kysely, Selectable } from 'kysely'
import { sql } from 'kysely'
import { Problem } from '#api/contract/problem.ts'
import type { Database } from './tables.ts'

/** The tables whose rows are written, listed and changed in the plain way, by id and version. */
export type PlainTable = Exclude<keyof Database, 'change' | 'result'>
type Row = Record<string, unknown>

// Kysely cannot follow a table that is only known by name; the row types at the borders of these functions hold instead.
type SomeRow = { id: string; version: number; createdAt: Date }
const plain = (db: Kysely<Database>) => db as unknown as Kysely<{ row: SomeRow }>
const named = (table: PlainTable) => table as 'row'

/**
 * Writes a row. The same row under the same id is harmless (`made` is false); a different one is refused.
 * Only what is sent is compared: what the database filled in does not make a repeat different.
 */
export async function addRow<T extends PlainTable>(
  db: Kysely<Database>,
  table: T,
  values: Insertable<Database[T]>,
): Promise<{ row: Selectable<Database[T]>; made: boolean }> {
  const sent = definedOf(values as Row)
  const row = await plain(db)
    .insertInto(named(table))
    .values(sent as never)
    .onConflict((conflict) => conflict.column('id').doNothing())
    .returningAll()
    .executeTakeFirst()
  if (row) return { row: row as Selectable<Database[T]>, made: true }
  const before = (await findRow(db, table, String(sent.id))) as Row | undefined
  const other = before && Object.keys(sent).find((key) => !isSame(sent[key], before[key]))
  if (!before || other) {
    throw new Problem('already-there', `Something else already stands under the id ${String(sent.id)}.`, [
      { pointer: `#/${other ?? 'id'}`, detail: 'This differs from what is kept under the same id.' },
    ])
  }
  return { row: before as Selectable<Database[T]>, made: false }
}

export async function findRow<T extends PlainTable>(
  db: Kysely<Database>,
  table: T,
  id: string,
): Promise<Selectable<Database[T]> | undefined> {
  const row = await plain(db)
    .selectFrom(named(table))
    .selectAll()
    .where('id', '=', id as never)
    .executeTakeFirst()
  return row as Selectable<Database[T]> | undefined
}

/** The row, or a refusal that says of what noun there is none. */
export async function theRow<T extends PlainTable>(
  db: Kysely<Database>,
  table: T,
  id: string,
  noun: string,
): Promise<Selectable<Database[T]>> {
  const row = await findRow(db, table, id)
  if (!row) throw new Problem('not-found', `There is no ${noun} under this id.`)
  return row
}

export type Page = { readonly limit: number; readonly after?: string | undefined }

/** A page of rows, oldest first, by keyset: `after` is the id of the last row of the page before. */
export async function listRows<T extends PlainTable>(
  db: Kysely<Database>,
  table: T,
  { limit, after, where = {} }: Page & { readonly where?: Row },
): Promise<{ rows: Selectable<Database[T]>[]; next: string | null }> {
  let query = plain(db).selectFrom(named(table)).selectAll()
  for (const [column, value] of Object.entries(where))
    query = query.where(column as 'id', '=', value as never)
  if (after) {
    query = query.where(
      sql<boolean>`(created_at, id) > (select created_at, id from ${sql.table(table)} where id = ${after})`,
    )
  }
  const rows = (await query
    .orderBy('createdAt')
    .orderBy('id')
    .limit(limit + 1)
    .execute()) as Selectable<Database[T]>[]
  const next = rows.length > limit ? String((rows[limit - 1] as Row).id) : null
  return { rows: rows.slice(0, limit), next }
}

/** Changes a row that is still at the version that was seen. */
export async function changeRow<T extends PlainTable>(
  db: Kysely<Database>,
  table: T,
  id: string,
  { version, values, noun }: { readonly version: number; readonly values: Row; readonly noun: string },
): Promise<Selectable<Database[T]>> {
  const row = await plain(db)
    .updateTable(named(table))
    .set({ ...definedOf(values), version: sql`version + 1` } as never)
    .where('id', '=', id as never)
    .where('version', '=', version as never)
    .returningAll()
    .executeTakeFirst()
  if (row) return row as Selectable<Database[T]>
  throw await changedOrGone(db, table, id, noun)
}

/** Removes a row that is still at the version that was seen. */
export async function removeRow<T extends PlainTable>(
  db: Kysely<Database>,
  table: T,
  id: string,
  { version, noun }: { readonly version: number; readonly noun: string },
): Promise<void> {
  const gone = await plain(db)
    .deleteFrom(named(table))
    .where('id', '=', id as never)
    .where('version', '=', version as never)
    .returning('id')
    .executeTakeFirst()
  if (!gone) throw await changedOrGone(db, table, id, noun)
}

async function changedOrGone(
  db: Kysely<Database>,
  table: PlainTable,
  id: string,
  noun: string,
): Promise<Problem> {
  const there = (await findRow(db, table, id)) as Row | undefined
  if (!there) return new Problem('not-found', `There is no ${noun} under this id.`)
  return new Problem(
    'changed-meanwhile',
    `This ${noun} was changed meanwhile; it is at version ${there.version}. Read it again.`,
  )
}

function definedOf(values: Row): Row {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined))
}

export function isSame(sent: unknown, kept: unknown): boolean {
  return canonical(sent) === canonical(kept)
}

function canonical(value: unknown): string {
  if (value instanceof Date) return JSON.stringify(value.toISOString())
  if (typeof value === 'string') {
    const json = jsonOf(value)
    if (json !== undefined) return canonical(json)
    return JSON.stringify(momentOf(value))
  }
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`
  if (value !== null && typeof value === 'object') {
    const entries = Object.entries(value).filter(([, part]) => part !== undefined)
    return `{${entries
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, part]) => `${JSON.stringify(key)}:${canonical(part)}`)
      .join(',')}}`
  }
  return JSON.stringify(value ?? null)
}

// Columns of JSON go in as text and come back parsed; both shall compare equal.
function jsonOf(text: string): unknown {
  if (!/^[[{]/.test(text)) return undefined
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

function momentOf(text: string): string {
  return /^\d{4}-\d\d-\d\dT/.test(text) && !Number.isNaN(Date.parse(text))
    ? new Date(text).toISOString()
    : text
}
