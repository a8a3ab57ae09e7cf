import { type Insertable, type Kysely, type RawBuilder, type Selectable, sql } from 'kysely'
import { Problem } from '#api/contract/problem.ts'
import type { NewRow } from './add-rows.ts'
import type { Database } from './tables.ts'

/** The tables whose rows are written, listed and changed in the plain way, by id and version. */
export type PlainTable = Exclude<keyof Database, 'change' | 'result' | 'journal'>
type Row = Readonly<Record<string, unknown>>

/**
 * Writes a row. The same row under the same id is harmless (`made` is false); a different one is refused.
 * Only what is sent is compared: what the database filled in does not make a repeat different.
 */
export async function addRow<T extends PlainTable>(
  db: Kysely<Database>,
  table: T,
  values: Insertable<Database[T]>,
): Promise<{ row: Selectable<Database[T]>; made: boolean }> {
  const sent = new Map(definedIn(values))
  const { rows } = await sql<Selectable<Database[T]>>`insert into ${sql.table(table)}
      (${sql.join([...sent.keys()].map((column) => sql.ref(column)))}) values (${sql.join([...sent.values()])})
    on conflict (id) do nothing returning *`.execute(db)
  const [row] = rows
  if (row) return { row, made: true }
  const id = String(sent.get('id'))
  const before = await findRow(db, table, id)
  const kept = new Map<string, unknown>(Object.entries(before ?? {}))
  const other = [...sent].find(([column, value]) => !isSame(value, kept.get(column)))
  if (!before || other) {
    throw new Problem('already-there', `Something else already stands under the id ${id}.`, [
      { pointer: `#/${other?.[0] ?? 'id'}`, detail: 'This differs from what is kept under the same id.' },
    ])
  }
  return { row: before, made: false }
}

export async function findRow<T extends PlainTable>(
  db: Kysely<Database>,
  table: T,
  id: string,
): Promise<Selectable<Database[T]> | undefined> {
  const { rows } = await sql<Selectable<Database[T]>>`select * from ${sql.table(table)}
    where id = ${id}`.execute(db)
  return rows[0]
}

/** The rows under these ids, in the order of the ids. */
export async function rowsUnder<T extends PlainTable>(
  db: Kysely<Database>,
  table: T,
  ids: readonly string[],
): Promise<Selectable<Database[T]>[]> {
  const { rows } = await sql<Selectable<Database[T]>>`select * from ${sql.table(table)}
    where id = any(${[...ids]}::uuid[]) order by id`.execute(db)
  return rows
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
  const asked: RawBuilder<unknown>[] = Object.entries(where).map(
    ([column, value]) => sql`${sql.ref(column)} = ${value}`,
  )
  if (after)
    asked.push(sql`(created_at, id) > (select created_at, id from ${sql.table(table)} where id = ${after})`)
  const which = asked.length > 0 ? sql`where ${sql.join(asked, sql` and `)}` : sql``
  const { rows } = await sql<
    Selectable<Database[T]> & { id: string }
  >`select * from ${sql.table(table)} ${which}
    order by created_at, id limit ${limit + 1}`.execute(db)
  return { rows: rows.slice(0, limit), next: rows.length > limit ? (rows[limit - 1]?.id ?? null) : null }
}

/** Changes a row that is still at the version that was seen. Columns of JSON are given as they are, or as their text. */
export async function changeRow<T extends PlainTable>(
  db: Kysely<Database>,
  table: T,
  id: string,
  { version, values, noun }: { readonly version: number; readonly values: NewRow<T>; readonly noun: string },
): Promise<Selectable<Database[T]>> {
  const set = definedIn(values).map(([column, value]) => sql`${sql.ref(column)} = ${asKept(value)}`)
  const { rows } = await sql<Selectable<Database[T]>>`update ${sql.table(table)}
    set ${sql.join([...set, sql`version = version + 1`])}
    where id = ${id} and version = ${version} returning *`.execute(db)
  const [row] = rows
  if (row) return row
  throw await changedOrGone(db, table, id, noun)
}

/** Removes a row that is still at the version that was seen. */
export async function removeRow<T extends PlainTable>(
  db: Kysely<Database>,
  table: T,
  id: string,
  { version, noun }: { readonly version: number; readonly noun: string },
): Promise<void> {
  const { rows } = await sql`delete from ${sql.table(table)}
    where id = ${id} and version = ${version} returning id`.execute(db)
  if (rows.length === 0) throw await changedOrGone(db, table, id, noun)
}

async function changedOrGone(
  db: Kysely<Database>,
  table: PlainTable,
  id: string,
  noun: string,
): Promise<Problem> {
  const { rows } = await sql<{ version: number }>`select version from ${sql.table(table)}
    where id = ${id}`.execute(db)
  const [there] = rows
  if (!there) return new Problem('not-found', `There is no ${noun} under this id.`)
  return new Problem(
    'changed-meanwhile',
    `This ${noun} was changed meanwhile; it is at version ${there.version}. Read it again.`,
  )
}

function definedIn(values: object): [string, unknown][] {
  return Object.entries(values).filter(([, value]) => value !== undefined)
}

/** Lists and objects go into columns of JSON as text. */
function asKept(value: unknown): unknown {
  return typeof value === 'object' && value !== null && !(value instanceof Date)
    ? JSON.stringify(value)
    : value
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
