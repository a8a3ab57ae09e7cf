import type { Selectable } from 'kysely'
import type { Reading } from '#api/contract/reading.ts'
import { correctedOf, momentText, storedOf } from '#api/records/moments.ts'
import type { ReadingTable } from '#db/tables.ts'

export function presentReading(row: Selectable<ReadingTable>): Reading {
  return {
    ...storedOf(row),
    skeinId: row.skeinId,
    sittingId: row.sittingId,
    placing: row.placing,
    wear: row.wear,
    wearFrom: row.wearFrom,
    wet: row.wet,
    restedH: row.restedH,
    spots: row.spots.map((it) => ({ ...it })),
    blindCode: row.blindCode,
    takenAt: momentText(row.takenAt),
    meanL: row.meanL,
    meanA: row.meanA,
    meanB: row.meanB,
    spotsN: row.spotsN,
    mcdm: row.mcdm,
    spread: row.spread,
    clipped: row.clipped,
    ...correctedOf(row),
  }
}
