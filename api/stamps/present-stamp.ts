import type { Selectable } from 'kysely'
import type { Stamp } from '#api/contract/stamp.ts'
import { correctedOf, storedOf } from '#api/records/moments.ts'
import type { StampTable } from '#db/tables.ts'

export function presentStamp(row: Selectable<StampTable>): Stamp {
  return {
    ...storedOf(row),
    sessionId: row.sessionId,
    vesselId: row.vesselId,
    skeinId: row.skeinId,
    kind: row.kind,
    at: row.at.toISOString(),
    what: row.what,
    entered: row.entered,
    stockId: row.stockId,
    grams: row.grams,
    ml: row.ml,
    ...correctedOf(row),
  }
}
