import type { Kysely } from 'kysely'
import { outcome } from '#api/contract/outcome.ts'
import { newRoutes } from '#api/http/routes.ts'
import { addTo } from '#api/records/add.ts'
import { addressesOf, addressesUnder } from '#api/records/addresses.ts'
import { listOf } from '#api/records/list.ts'
import { ownedNoun } from '#api/records/noun.ts'
import { presentMeasured } from '#api/records/present.ts'
import { showOne } from '#api/records/show.ts'
import { skeinsOfThings, thingOf } from '#db/skeins-of-things.ts'
import type { Database } from '#db/tables.ts'
import { addOutcomes } from './add-outcomes.ts'

/** Graded and measured results that are no colour readings. */
export const outcomes = ownedNoun({
  table: 'outcome',
  noun: 'outcome',
  plural: 'outcomes',
  measured: true,
  ...outcome,
  present: presentMeasured(outcome),
  owner: 'trial',
  whole: 'outcomes of a trial',
  add: (tx, trial, items, adding) => addOutcomes(tx, trial.id, items, adding),
  touches: skeinsOfThings,
  judged: { but: [], of: thingOf },
})

const under = addressesUnder('/{id}/outcomes', outcomes)
const at = addressesOf(outcomes)

/** `/api/trials/{id}/outcomes`. */
export function trialOutcomeRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(under.listed, listOf(db, outcomes)).openapi(under.added, addTo(db, outcomes))
}

/** `/api/outcomes/{id}`. */
export function outcomeRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(at.one, showOne(db, outcomes))
}
