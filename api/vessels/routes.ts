import type { Kysely } from 'kysely'
import { Exposure, NewExposure } from '#api/contract/exposure.ts'
import { NewPlacement, Placement } from '#api/contract/placement.ts'
import { ChangedVessel, Vessel } from '#api/contract/vessel.ts'
import { addExposures } from '#api/exposures/add-exposures.ts'
import { presentExposure } from '#api/exposures/present-exposure.ts'
import { addPlacements } from '#api/placements/add-placements.ts'
import { presentPlacement } from '#api/placements/present-placement.ts'
import { faultOfLoss, refuseFaults } from '#api/records/adding.ts'
import { changedConditions } from '#api/records/changed.ts'
import { gatheredRoutes } from '#api/records/gathered-routes.ts'
import { recordRoutes } from '#api/records/record-routes.ts'
import { deriveResults } from '#api/results/derive-results.ts'
import { refuseStrangers } from '#db/belonging.ts'
import { findSkeinsOf, loseSkeinsOf, skeinsIn } from '#db/losses.ts'
import { refuseIfMeasured } from '#db/measured.ts'
import type { Database } from '#db/tables.ts'
import { trialOfVessel } from '#db/trial-of.ts'
import { presentVessel } from './present-vessel.ts'

/** `/api/vessels/{id}/placements`. */
export function vesselPlacementRoutes(db: Kysely<Database>) {
  return gatheredRoutes(db, {
    path: '/{id}/placements',
    owner: 'vessel',
    table: 'placement',
    noun: 'placement',
    plural: 'placements',
    whole: 'placements of a vessel',
    sent: NewPlacement,
    shown: Placement,
    present: presentPlacement,
    write: async (tx, vessel, items, adding) => {
      const rows = items.map((item) => ({ ...item, vesselId: vessel.id }))
      const added = await addPlacements(tx, await trialOfVessel(tx, vessel.id), rows, adding)
      await deriveResults(
        tx,
        added.rows.map((row) => row.skeinId),
      )
      return added
    },
  })
}

/** `/api/vessels/{id}/exposures`. */
export function vesselExposureRoutes(db: Kysely<Database>) {
  return gatheredRoutes(db, {
    path: '/{id}/exposures',
    owner: 'vessel',
    table: 'exposure',
    noun: 'exposure',
    plural: 'exposures',
    whole: 'exposures of a vessel',
    sent: NewExposure,
    shown: Exposure,
    present: presentExposure,
    write: async (tx, vessel, items, adding) => {
      const rows = items.map((item) => ({ ...item, vesselId: vessel.id }))
      const added = await addExposures(tx, await trialOfVessel(tx, vessel.id), rows, adding)
      await deriveResults(tx, await skeinsIn(tx, { vesselIds: [vessel.id] }))
      return added
    },
  })
}

/** `/api/vessels/{id}`. A lost vessel makes its skeins lost; found again, those that were lost with it come back. */
export function vesselRoutes(db: Kysely<Database>) {
  return recordRoutes(db, {
    table: 'vessel',
    noun: 'vessel',
    plural: 'vessels',
    changed: ChangedVessel,
    shown: Vessel,
    present: presentVessel,
    prepare: async (tx, before, sent, doubts) => {
      refuseFaults(faultOfLoss({ ...before, ...sent }, '#'))
      const recipe = { table: 'recipe' as const, id: sent.recipeId, pointer: '#/recipeId' }
      await refuseStrangers(tx, undefined, [recipe])
      const trialId = await trialOfVessel(tx, before.id)
      const found = sent.status !== undefined && sent.status !== 'lost' ? { lostReason: null } : {}
      return { ...sent, ...found, ...(await changedConditions(tx, trialId, sent, doubts)) }
    },
    follow: async (tx, before, after) => {
      if (after.status === 'lost') await loseSkeinsOf(tx, { vesselIds: [after.id] })
      else if (before.status === 'lost')
        await findSkeinsOf(
          tx,
          { label: before.label, lostReason: before.lostReason ?? '', status: after.status },
          after.id,
        )
    },
    keep: (tx, { id }) =>
      refuseIfMeasured(
        tx,
        { vesselId: id },
        'Something was recorded of this vessel, so it stays. Mark it as lost, with the reason.',
      ),
    touched: (tx, { id }) => skeinsIn(tx, { vesselIds: [id] }),
  })
}

export type VesselPlacementRoutes = ReturnType<typeof vesselPlacementRoutes>
export type VesselExposureRoutes = ReturnType<typeof vesselExposureRoutes>
export type VesselRoutes = ReturnType<typeof vesselRoutes>
