import type { Kysely } from 'kysely'
import { NewStamp, Stamp } from '#api/contract/stamp.ts'
import { newRoutes } from '#api/http/routes.ts'
import { showing } from '#api/records/addresses.ts'
import { gatheredRoutes } from '#api/records/gathered-routes.ts'
import { theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { addStamps } from './add-stamps.ts'
import { presentStamp } from './present-stamp.ts'

/** `/api/trials/{id}/stamps`. */
export function trialStampRoutes(db: Kysely<Database>) {
  return gatheredRoutes(db, {
    path: '/{id}/stamps',
    owner: 'trial',
    table: 'stamp',
    noun: 'stamp',
    plural: 'stamps',
    whole: 'stamps of a trial',
    sent: NewStamp,
    shown: Stamp,
    present: presentStamp,
    write: (tx, trial, items, adding) => addStamps(tx, trial.id, items, adding),
  })
}

const shown = showing({ tags: ['stamps'], summary: 'One stamp', shown: Stamp })

/** `/api/stamps/{id}`. */
export function stampRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(shown, async (c) => {
    const row = await theRow(db, 'stamp', c.req.valid('param').id, 'stamp')
    return c.json(presentStamp(row), 200)
  })
}

export type TrialStampRoutes = ReturnType<typeof trialStampRoutes>
export type StampRoutes = ReturnType<typeof stampRoutes>
