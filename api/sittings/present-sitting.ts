import type { Selectable } from 'kysely'
import type { Sitting } from '#api/contract/sitting.ts'
import { momentText, storedOf } from '#api/records/moments.ts'
import type { SittingTable } from '#db/tables.ts'

export function presentSitting(row: Selectable<SittingTable>): Sitting {
  return {
    ...storedOf(row),
    trialId: row.trialId,
    method: row.method,
    instrumentId: row.instrumentId,
    at: momentText(row.at),
    label: row.label,
    illuminant: row.illuminant,
    observer: row.observer,
    geometry: row.geometry,
    apertureMm: row.apertureMm,
    card: row.card,
    light: row.light,
    inFrameStandardId: row.inFrameStandardId,
    person: row.person,
  }
}
