import type { Kysely } from 'kysely'
import { placement } from '#api/contract/placement.ts'
import { newRoutes } from '#api/http/routes.ts'
import { addTo } from '#api/records/add.ts'
import { refuseFaults } from '#api/records/adding.ts'
import { addressesOf, addressesUnder, changesOf } from '#api/records/addresses.ts'
import { changeOne } from '#api/records/change.ts'
import { listOf } from '#api/records/list.ts'
import { plainNoun } from '#api/records/noun.ts'
import { presentPlain } from '#api/records/present.ts'
import { removeOne } from '#api/records/remove.ts'
import { showOne } from '#api/records/show.ts'
import type { Database } from '#db/tables.ts'
import { trialOfVessel } from '#db/trial-of.ts'
import { addPlacements } from './add-placements.ts'

/** Skeins in vessels. */
export const placements = plainNoun({
  table: 'placement',
  noun: 'placement',
  plural: 'placements',
  measured: false,
  ...placement,
  present: presentPlain(placement),
  owner: 'vessel',
  whole: 'placements of a vessel',
  add: async (tx, { id: vesselId }, items, adding) => {
    const rows = items.map((item) => ({ ...item, vesselId }))
    return addPlacements(tx, await trialOfVessel(tx, vesselId), rows, adding)
  },
  prepare: async (_tx, before, sent) => {
    const { inAt, outAt } = { ...before, ...sent }
    if (inAt && outAt && new Date(outAt) < new Date(inAt))
      refuseFaults([{ pointer: '#/outAt', detail: 'It came out before it went in.' }])
    return sent
  },
  touches: async (_tx, rows) => rows.map((row) => row.skeinId),
  judged: { but: [], of: ({ skeinId }) => ({ table: 'skein', id: skeinId }) },
})

const under = addressesUnder('/{id}/placements', placements)
const at = { ...addressesOf(placements), ...changesOf(placements) }

/** `/api/vessels/{id}/placements`. */
export function vesselPlacementRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(under.listed, listOf(db, placements)).openapi(under.added, addTo(db, placements))
}

/** `/api/placements/{id}`. */
export function placementRoutes(db: Kysely<Database>) {
  return newRoutes()
    .openapi(at.one, showOne(db, placements))
    .openapi(at.changed, changeOne(db, placements))
    .openapi(at.removed, removeOne(db, placements))
}
