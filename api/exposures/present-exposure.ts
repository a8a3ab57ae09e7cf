import type { Selectable } from 'kysely'
import type { Exposure } from '#api/contract/exposure.ts'
import { correctedOf, momentText, storedOf } from '#api/records/moments.ts'
import type { ExposureTable } from '#db/tables.ts'

export function presentExposure(row: Selectable<ExposureTable>): Exposure {
  return {
    ...storedOf(row),
    vesselId: row.vesselId,
    protocol: row.protocol,
    cycles: row.cycles,
    strokes: row.strokes,
    startedAt: momentText(row.startedAt),
    endedAt: momentText(row.endedAt),
    doseMlxh: row.doseMlxh,
    due: row.due,
    conditions: row.conditions,
    ...correctedOf(row),
  }
}
