import type { Selectable } from 'kysely'
import type { Instrument } from '#api/contract/instrument.ts'
import { storedOf } from '#api/records/moments.ts'
import type { InstrumentTable } from '#db/tables.ts'

export function presentInstrument(row: Selectable<InstrumentTable>): Instrument {
  return {
    ...storedOf(row),
    name: row.name,
    method: row.method,
    sdL: row.sdL,
    sdA: row.sdA,
    sdB: row.sdB,
    sdFrom: row.sdFrom,
    checkedOn: row.checkedOn,
  }
}
