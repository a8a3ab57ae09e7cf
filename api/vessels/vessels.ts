import type { Kysely } from 'kysely'
import { vessel } from '#api/contract/vessel.ts'
import { newRoutes } from '#api/http/routes.ts'
import { addTo } from '#api/records/add.ts'
import { faultOfLoss, refuseFaults } from '#api/records/adding.ts'
import { addressesOf, addressesUnder, changesOf } from '#api/records/addresses.ts'
import { changeOne } from '#api/records/change.ts'
import { conditionsChecked } from '#api/records/conditions-checked.ts'
import { listOf } from '#api/records/list.ts'
import { plainNoun } from '#api/records/noun.ts'
import { presentPlain } from '#api/records/present.ts'
import { removeOne } from '#api/records/remove.ts'
import { showOne } from '#api/records/show.ts'
import { refuseStrangers } from '#db/belonging.ts'
import { findSkeinsOf, loseSkeinsOf, skeinsIn } from '#db/losses.ts'
import { refuseIfMeasured } from '#db/measured.ts'
import type { Database } from '#db/tables.ts'
import { trialOfVessel } from '#db/trial-of.ts'
import { addVessels } from './add-vessels.ts'

/** Fillings of pots, jars, packets and cards. A lost one makes its skeins lost; found again, they come back. */
export const vessels = plainNoun({
  table: 'vessel',
  noun: 'vessel',
  plural: 'vessels',
  measured: false,
  ...vessel,
  present: presentPlain(vessel),
  owner: 'session',
  whole: 'vessels of a session',
  add: (tx, { id, trialId }, items, adding) =>
    addVessels(
      tx,
      trialId,
      items.map((item) => ({ ...item, sessionId: id })),
      adding,
    ),
  // Nothing lies in a new vessel yet.
  derive: async () => {},
  prepare: async (tx, before, sent, doubts) => {
    const { status = before.status, lostReason = before.lostReason } = sent
    refuseFaults(faultOfLoss({ status, lostReason }, '#'))
    await refuseStrangers(tx, undefined, [{ table: 'recipe', id: sent.recipeId, pointer: '#/recipeId' }])
    const trialId = await trialOfVessel(tx, before.id)
    const found = sent.status !== undefined && sent.status !== 'lost' ? { lostReason: null } : {}
    return { ...(await conditionsChecked(tx, trialId, sent, doubts)), ...found }
  },
  follow: async (tx, { label, status, lostReason }, after) => {
    if (after.status === 'lost') return loseSkeinsOf(tx, { vesselIds: [after.id] })
    if (status !== 'lost') return []
    return findSkeinsOf(tx, { label, lostReason: lostReason ?? '', status: after.status }, after.id)
  },
  keep: (tx, { id }) =>
    refuseIfMeasured(
      tx,
      { vesselId: id },
      'Something was recorded of this vessel, so it stays. Mark it as lost, with the reason.',
    ),
  touches: (tx, rows) => skeinsIn(tx, { vesselIds: rows.map((row) => row.id) }),
  judged: { but: ['label'], of: ({ sessionId }) => ({ table: 'session', id: sessionId }) },
})

const under = addressesUnder('/{id}/vessels', vessels)
const at = { ...addressesOf(vessels), ...changesOf(vessels) }

/** `/api/sessions/{id}/vessels`. */
export function sessionVesselRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(under.listed, listOf(db, vessels)).openapi(under.added, addTo(db, vessels))
}

/** `/api/vessels/{id}`. */
export function vesselRoutes(db: Kysely<Database>) {
  return newRoutes()
    .openapi(at.one, showOne(db, vessels))
    .openapi(at.changed, changeOne(db, vessels))
    .openapi(at.removed, removeOne(db, vessels))
}
