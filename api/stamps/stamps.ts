import type { Kysely } from 'kysely'
import { stamp } from '#api/contract/stamp.ts'
import { newRoutes } from '#api/http/routes.ts'
import { addTo } from '#api/records/add.ts'
import { addressesOf, addressesUnder } from '#api/records/addresses.ts'
import { listOf } from '#api/records/list.ts'
import { ownedNoun } from '#api/records/noun.ts'
import { presentMeasured } from '#api/records/present.ts'
import { showOne } from '#api/records/show.ts'
import { skeinsOfThings } from '#db/skeins-of-things.ts'
import type { Database } from '#db/tables.ts'
import { addStamps } from './add-stamps.ts'

/** What happened at the stove, and when. */
export const stamps = ownedNoun({
  table: 'stamp',
  noun: 'stamp',
  plural: 'stamps',
  measured: true,
  ...stamp,
  present: presentMeasured(stamp),
  owner: 'trial',
  whole: 'stamps of a trial',
  add: (tx, trial, items, adding) => addStamps(tx, trial.id, items, adding),
  touches: skeinsOfThings,
  derives: false,
  judged: { but: [], of: ({ sessionId }) => ({ table: 'session', id: sessionId }) },
})

const under = addressesUnder('/{id}/stamps', stamps)
const at = addressesOf(stamps)

/** `/api/trials/{id}/stamps`. */
export function trialStampRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(under.listed, listOf(db, stamps)).openapi(under.added, addTo(db, stamps))
}

/** `/api/stamps/{id}`. */
export function stampRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(at.one, showOne(db, stamps))
}
