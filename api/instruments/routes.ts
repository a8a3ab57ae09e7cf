import type { Kysely } from 'kysely'
import { ChangedInstrument, Instrument, NewInstrument } from '#api/contract/instrument.ts'
import { catalogueRoutes } from '#api/records/catalogue-routes.ts'
import type { Database } from '#db/tables.ts'
import { presentInstrument } from './present-instrument.ts'

/** `/api/instruments`: ways of measuring, with their noise. */
export function instrumentRoutes(db: Kysely<Database>) {
  return catalogueRoutes(db, {
    table: 'instrument',
    noun: 'instrument',
    plural: 'instruments',
    sent: NewInstrument,
    changed: ChangedInstrument,
    shown: Instrument,
    present: presentInstrument,
    complete: (_db, instrument) => instrument,
  })
}

export type InstrumentRoutes = ReturnType<typeof instrumentRoutes>
