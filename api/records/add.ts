import type { Kysely } from 'kysely'
import { type Doubt, type Sent as SentBody, sentAs } from '#api/contract/one-or-many.ts'
import type { z } from '#api/contract/schema.ts'
import { deriveResults } from '#api/results/derive-results.ts'
import { type PlainTable, theRow } from '#db/rows.ts'
import type { SkeinChange } from '#db/skein-change.ts'
import type { Database } from '#db/tables.ts'
import { writing } from '#db/writing.ts'
import { keepAdded } from './journal.ts'
import { keptAs } from './kept.ts'
import type { Noun, Owner, RowOf, Under, Written } from './noun.ts'
import { type Said, saidIn } from './said.ts'
import type { Checked, ValidBody, ValidId } from './valid.ts'

type Body<New> = New | { items: New[] }

/** POST of one record or of many under what they belong to, with what follows from them, all or nothing. */
export function addTo<
  T extends PlainTable,
  Sent extends z.ZodType<object>,
  Shown extends z.ZodObject,
  O extends Owner,
>(db: Kysely<Database>, it: Noun<T, Sent, Shown> & Under<O> & Written<T, RowOf<O>, z.output<Sent>>) {
  return async (c: Checked<ValidId & ValidBody<Body<z.output<Sent>>>>) => {
    const sent = sentAs(c.req.valid('json'))
    const { id } = c.req.valid('param')
    const owner = (tx: Kysely<Database>) => theRow(tx, it.owner, id, it.owner)
    const { kept, made } = await keep(db, it, { sent, owner, said: saidIn(c) })
    return made ? c.json(kept, 201) : c.json(kept, 200)
  }
}

/** POST of one record or of many that belong to nothing. */
export function addFree<T extends PlainTable, Sent extends z.ZodType<object>, Shown extends z.ZodObject>(
  db: Kysely<Database>,
  it: Noun<T, Sent, Shown> & Written<T, null, z.output<Sent>>,
) {
  return async (c: Checked<ValidBody<Body<z.output<Sent>>>>) => {
    const sent = sentAs(c.req.valid('json'))
    const { kept, made } = await keep(db, it, { sent, owner: async () => null, said: saidIn(c) })
    return made ? c.json(kept, 201) : c.json(kept, 200)
  }
}

type Asked<O, New> = {
  readonly sent: SentBody<New>
  readonly owner: (tx: Kysely<Database>) => Promise<O>
  readonly said: Said
}

async function keep<T extends PlainTable, Sent extends z.ZodType<object>, Shown extends z.ZodObject, O>(
  db: Kysely<Database>,
  it: Noun<T, Sent, Shown> & Written<T, O, z.output<Sent>>,
  { sent, owner, said }: Asked<O, z.output<Sent>>,
) {
  const { added, doubts } = await writing(db, async (tx) => {
    const doubts: Doubt[] = []
    const skeins: SkeinChange[] = []
    const adding = { at: sent.at, doubts, skeins }
    const added = await it.add(tx, await owner(tx), sent.items, adding)
    if (it.derive) await it.derive(tx, added, adding)
    else if (it.derives !== false) await deriveResults(tx, await it.touches(tx, added.rows))
    await keepAdded(tx, it, added, { said, skeins })
    return { added, doubts }
  })
  return { kept: keptAs(sent, { rows: added.rows, doubts }, it.present), made: added.madeIds.size > 0 }
}
