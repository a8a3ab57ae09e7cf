import type { Selectable } from 'kysely'
import type { Treatment } from '#api/contract/treatment.ts'
import { storedOf } from '#api/records/moments.ts'
import type { TreatmentTable } from '#db/tables.ts'

export function presentTreatment(row: Selectable<TreatmentTable>): Treatment {
  return {
    ...storedOf(row),
    factorId: row.factorId,
    levelId: row.levelId,
    drawnLevelId: row.drawnLevelId,
    sessionId: row.sessionId,
    vesselId: row.vesselId,
    skeinId: row.skeinId,
  }
}
