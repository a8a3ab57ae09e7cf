import type { Kysely } from 'kysely'
import type { Doubt } from '#api/contract/one-or-many.ts'
import type { z } from '#api/contract/schema.ts'
import { versionSeen } from '#api/http/routes.ts'
import { deriveResults } from '#api/results/derive-results.ts'
import { holdKin } from '#db/hold-kin.ts'
import { changeRow, type PlainTable, theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { writing } from '#db/writing.ts'
import { keepChanged } from './journal.ts'
import type { Changed, Noun } from './noun.ts'
import { saidIn } from './said.ts'
import type { Checked, ValidBody, ValidId, ValidMatch } from './valid.ts'

/** PATCH of a record that is still at the version that was seen; results follow in the same transaction. */
export function changeOne<
  T extends PlainTable,
  Sent extends z.ZodType,
  Shown extends z.ZodObject,
  Part extends z.ZodType,
>(db: Kysely<Database>, it: Noun<T, Sent, Shown> & Changed<T, Part>) {
  return async (c: Checked<ValidId & ValidMatch & ValidBody<z.output<Part>>>) => {
    const version = versionSeen(c.req.valid('header'))
    const { id } = c.req.valid('param')
    const { row, doubts } = await writing(db, async (tx) => {
      const doubts: Doubt[] = []
      const before = await theRow(tx, it.table, id, it.noun)
      const values = await it.prepare(tx, before, c.req.valid('json'), doubts)
      const skeinIds = await it.touches(tx, [before])
      if (it.derives !== false) await holdKin(tx, skeinIds)
      const after = await changeRow(tx, it.table, id, { version, values, noun: it.noun })
      const skeins = (await it.follow?.(tx, before, after)) ?? []
      const touched = [...new Set([...skeinIds, ...(await it.touches(tx, [after]))])]
      if (it.derives !== false) await deriveResults(tx, touched)
      await keepChanged(tx, it, [before, after], { said: saidIn(c), skeins, touched })
      return { row: after, doubts }
    })
    return c.json({ ...it.present(row), doubts }, 200)
  }
}
