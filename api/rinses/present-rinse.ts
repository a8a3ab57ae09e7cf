import type { Selectable } from 'kysely'
import type { Rinse } from '#api/contract/rinse.ts'
import { correctedOf, storedOf } from '#api/records/moments.ts'
import type { RinseTable } from '#db/tables.ts'

export function presentRinse(row: Selectable<RinseTable>): Rinse {
  return {
    ...storedOf(row),
    skeinId: row.skeinId,
    vesselId: row.vesselId,
    number: row.number,
    mlPerG: row.mlPerG,
    temperatureC: row.temperatureC,
    minutes: row.minutes,
    clarity: row.clarity,
    detergentGL: row.detergentGL,
    ...correctedOf(row),
  }
}
