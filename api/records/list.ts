import type { Kysely } from 'kysely'
import type { z } from '#api/contract/schema.ts'
import { pageOf } from '#db/pages.ts'
import { type PlainTable, theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import type { Noun, Owned, Owner, RowOf } from './noun.ts'
import type { Checked, ValidId, ValidPage } from './valid.ts'

/** GET of the records that belong to one thing, oldest first. */
export function listOf<
  T extends PlainTable,
  Sent extends z.ZodType,
  Shown extends z.ZodObject,
  O extends Owner,
>(db: Kysely<Database>, { owner, whole, present }: Noun<T, Sent, Shown> & Owned<T, O, z.output<Sent>>) {
  return async (c: Checked<ValidId & ValidPage>) => {
    const { id } = c.req.valid('param')
    await theRow(db, owner, id, owner)
    const { rows, next } = await pageOf<RowOf<T>>(db, whole, id, c.req.valid('query'))
    return c.json({ items: rows.map(present), next }, 200)
  }
}
