import type { Kysely } from 'kysely'
import { treatment } from '#api/contract/treatment.ts'
import { newRoutes } from '#api/http/routes.ts'
import { addTo } from '#api/records/add.ts'
import { addressesOf, addressesUnder, removalOf } from '#api/records/addresses.ts'
import { listOf } from '#api/records/list.ts'
import { ownedNoun } from '#api/records/noun.ts'
import { presentPlain } from '#api/records/present.ts'
import { removeOne } from '#api/records/remove.ts'
import { showOne } from '#api/records/show.ts'
import { skeinsOfThings } from '#db/skeins-of-things.ts'
import type { Database } from '#db/tables.ts'
import { addTreatments } from './add-treatments.ts'

/** Levels that were given to sessions, vessels or skeins, by plan. Another one is given by a new treatment. */
export const treatments = ownedNoun({
  table: 'treatment',
  noun: 'treatment',
  plural: 'treatments',
  measured: false,
  ...treatment,
  present: presentPlain(treatment),
  owner: 'trial',
  whole: 'treatments of a trial',
  add: (tx, trial, items, adding) => addTreatments(tx, trial.id, items, adding),
  touches: skeinsOfThings,
  derives: false,
  judged: { but: [], of: ({ levelId }) => ({ table: 'level', id: levelId }) },
})

const under = addressesUnder('/{id}/treatments', treatments)
const at = {
  ...addressesOf(treatments),
  removed: removalOf(treatments, 'Take a level back; another is given by a new treatment'),
}

/** `/api/trials/{id}/treatments`. */
export function trialTreatmentRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(under.listed, listOf(db, treatments)).openapi(under.added, addTo(db, treatments))
}

/** `/api/treatments/{id}`. */
export function treatmentRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(at.one, showOne(db, treatments)).openapi(at.removed, removeOne(db, treatments))
}
