import type { Kysely } from 'kysely'
import { rinse } from '#api/contract/rinse.ts'
import { newRoutes } from '#api/http/routes.ts'
import { addTo } from '#api/records/add.ts'
import { addressesOf, addressesUnder } from '#api/records/addresses.ts'
import { listOf } from '#api/records/list.ts'
import { ownedNoun } from '#api/records/noun.ts'
import { presentMeasured } from '#api/records/present.ts'
import { showOne } from '#api/records/show.ts'
import { skeinsOfThings, thingOf } from '#db/skeins-of-things.ts'
import type { Database } from '#db/tables.ts'
import { addRinses } from './add-rinses.ts'

/** Changes of water, of a skein or of a vessel. */
export const rinses = ownedNoun({
  table: 'rinse',
  noun: 'rinse',
  plural: 'rinses',
  measured: true,
  ...rinse,
  present: presentMeasured(rinse),
  owner: 'trial',
  whole: 'rinses of a trial',
  add: (tx, trial, items, adding) => addRinses(tx, trial.id, items, adding),
  touches: skeinsOfThings,
  judged: { but: [], of: thingOf },
})

const under = addressesUnder('/{id}/rinses', rinses)
const at = addressesOf(rinses)

/** `/api/trials/{id}/rinses`. */
export function trialRinseRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(under.listed, listOf(db, rinses)).openapi(under.added, addTo(db, rinses))
}

/** `/api/rinses/{id}`. */
export function rinseRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(at.one, showOne(db, rinses))
}
