import type { Kysely } from 'kysely'
import type { z } from '#api/contract/schema.ts'
import { pageOf, type WholeName } from '#db/pages.ts'
import { listRows, type PlainTable, theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import type { Noun, Owner, RowOf, Under } from './noun.ts'
import type { Checked, ValidId, ValidPage } from './valid.ts'

/** GET of the records that belong to one thing, oldest first. */
export function listOf<
  T extends PlainTable,
  Sent extends z.ZodType,
  Shown extends z.ZodObject,
  O extends Owner,
>(db: Kysely<Database>, { owner, whole, present }: Noun<T, Sent, Shown> & Under<O>) {
  return async (c: Checked<ValidId & ValidPage>) => {
    const { id } = c.req.valid('param')
    await theRow(db, owner, id, owner)
    const { rows, next } = await pageOf<RowOf<T>>(db, whole, id, c.req.valid('query'))
    return c.json({ items: rows.map(present), next }, 200)
  }
}

/** GET of all records of a noun, oldest first. */
export function listAll<T extends PlainTable, Sent extends z.ZodType, Shown extends z.ZodObject>(
  db: Kysely<Database>,
  { table, present }: Noun<T, Sent, Shown>,
) {
  return async (c: Checked<ValidPage>) => {
    const { rows, next } = await listRows(db, table, c.req.valid('query'))
    return c.json({ items: rows.map(present), next }, 200)
  }
}

/** GET of the records of a noun that belong to nothing, oldest first. */
export function listWhole<T extends PlainTable, Sent extends z.ZodType, Shown extends z.ZodObject>(
  db: Kysely<Database>,
  { present }: Noun<T, Sent, Shown>,
  whole: WholeName,
) {
  return async (c: Checked<ValidPage>) => {
    const { rows, next } = await pageOf<RowOf<T>>(db, whole, '', c.req.valid('query'))
    return c.json({ items: rows.map(present), next }, 200)
  }
}
