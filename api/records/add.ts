import type { Kysely } from 'kysely'
import { type Doubt, sentAs } from '#api/contract/one-or-many.ts'
import type { z } from '#api/contract/schema.ts'
import { deriveResults } from '#api/results/derive-results.ts'
import { type PlainTable, theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { writing } from '#db/writing.ts'
import { keptAs } from './kept.ts'
import type { Noun, Owned, Owner } from './noun.ts'
import type { Checked, ValidBody, ValidId } from './valid.ts'

type Body<New> = New | { items: New[] }

/** POST of one record or of many under what they belong to, with what follows from them, all or nothing. */
export function addTo<
  T extends PlainTable,
  Sent extends z.ZodType<object>,
  Shown extends z.ZodObject,
  O extends Owner,
>(db: Kysely<Database>, it: Noun<T, Sent, Shown> & Owned<T, O, z.output<Sent>>) {
  return async (c: Checked<ValidId & ValidBody<Body<z.output<Sent>>>>) => {
    const sent = sentAs(c.req.valid('json'))
    const { id } = c.req.valid('param')
    const { added, doubts } = await writing(db, async (tx) => {
      const doubts: Doubt[] = []
      const owner = await theRow(tx, it.owner, id, it.owner)
      const added = await it.add(tx, owner, sent.items, { at: sent.at, doubts })
      if (it.derive) await it.derive(tx, added, { at: sent.at, doubts })
      else await deriveResults(tx, await it.touches(tx, added.rows))
      return { added, doubts }
    })
    const kept = keptAs(sent, { rows: added.rows, doubts }, it.present)
    return added.madeN > 0 ? c.json(kept, 201) : c.json(kept, 200)
  }
}
