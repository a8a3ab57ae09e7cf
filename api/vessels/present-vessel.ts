import type { Selectable } from 'kysely'
import type { Vessel } from '#api/contract/vessel.ts'
import { storedOf } from '#api/records/moments.ts'
import type { VesselTable } from '#db/tables.ts'

export function presentVessel(row: Selectable<VesselTable>): Vessel {
  return {
    ...storedOf(row),
    sessionId: row.sessionId,
    stage: row.stage,
    kind: row.kind,
    label: row.label,
    equipment: row.equipment,
    place: row.place,
    drawnOrder: row.drawnOrder,
    recipeId: row.recipeId,
    conditions: row.conditions,
    assumed: row.assumed,
    status: row.status,
    lostReason: row.lostReason,
  }
}
