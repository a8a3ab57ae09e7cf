import type { Kysely } from 'kysely'
import { exposure } from '#api/contract/exposure.ts'
import { newRoutes } from '#api/http/routes.ts'
import { addTo } from '#api/records/add.ts'
import { addressesOf, addressesUnder } from '#api/records/addresses.ts'
import { listOf } from '#api/records/list.ts'
import { ownedNoun } from '#api/records/noun.ts'
import { presentMeasured } from '#api/records/present.ts'
import { showOne } from '#api/records/show.ts'
import { skeinsIn } from '#db/losses.ts'
import type { Database } from '#db/tables.ts'
import { trialOfVessel } from '#db/trial-of.ts'
import { addExposures } from './add-exposures.ts'

/** Washes, wet contacts, rubs and light exposures of vessels. */
export const exposures = ownedNoun({
  table: 'exposure',
  noun: 'exposure',
  plural: 'exposures',
  measured: true,
  ...exposure,
  present: presentMeasured(exposure),
  owner: 'vessel',
  whole: 'exposures of a vessel',
  add: async (tx, { id: vesselId }, items, adding) => {
    const rows = items.map((item) => ({ ...item, vesselId }))
    return addExposures(tx, await trialOfVessel(tx, vesselId), rows, adding)
  },
  touches: (tx, rows) => skeinsIn(tx, { vesselIds: [...new Set(rows.map((row) => row.vesselId))] }),
  judged: { but: [], of: ({ vesselId }) => ({ table: 'vessel', id: vesselId }) },
})

const under = addressesUnder('/{id}/exposures', exposures)
const at = addressesOf(exposures)

/** `/api/vessels/{id}/exposures`. */
export function vesselExposureRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(under.listed, listOf(db, exposures)).openapi(under.added, addTo(db, exposures))
}

/** `/api/exposures/{id}`. */
export function exposureRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(at.one, showOne(db, exposures))
}
