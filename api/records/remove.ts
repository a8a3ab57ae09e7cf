import type { Kysely } from 'kysely'
import type { z } from '#api/contract/schema.ts'
import { versionSeen } from '#api/http/routes.ts'
import { deriveResults } from '#api/results/derive-results.ts'
import { holdKin } from '#db/hold-kin.ts'
import { type PlainTable, removeRow, theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { writing } from '#db/writing.ts'
import { keepRemoved } from './journal.ts'
import type { Noun } from './noun.ts'
import { saidIn } from './said.ts'
import type { Checked, ValidId, ValidMatch } from './valid.ts'

/** DELETE of a record that is still at the version that was seen, with what hangs on it. */
export function removeOne<T extends PlainTable, Sent extends z.ZodType, Shown extends z.ZodObject>(
  db: Kysely<Database>,
  it: Noun<T, Sent, Shown>,
) {
  return async (c: Checked<ValidId & ValidMatch>) => {
    const version = versionSeen(c.req.valid('header'))
    const { id } = c.req.valid('param')
    await writing(db, async (tx) => {
      const row = await theRow(tx, it.table, id, it.noun)
      await it.keep?.(tx, row)
      const touched = await it.touches(tx, [row])
      if (it.derives !== false) await holdKin(tx, touched)
      await keepRemoved(tx, it, row, { said: saidIn(c), touched })
      await removeRow(tx, it.table, id, { version, noun: it.noun })
      if (it.derives !== false) await deriveResults(tx, touched)
    })
    return c.body(null, 204)
  }
}
