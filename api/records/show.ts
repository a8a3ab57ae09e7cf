import type { Kysely } from 'kysely'
import type { z } from '#api/contract/schema.ts'
import { type PlainTable, theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import type { Noun } from './noun.ts'
import type { Checked, ValidId } from './valid.ts'

/** GET of one record; what may be changed says its version as an ETag too. */
export function showOne<T extends PlainTable, Sent extends z.ZodType, Shown extends z.ZodObject>(
  db: Kysely<Database>,
  { table, noun, measured, present }: Noun<T, Sent, Shown>,
) {
  return async (c: Checked<ValidId>) => {
    const row = await theRow(db, table, c.req.valid('param').id, noun)
    const shown = present(row)
    if (!measured) c.header('etag', `"${shown.version}"`)
    return c.json(shown, 200)
  }
}
