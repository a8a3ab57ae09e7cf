import type { Kysely } from 'kysely'
import { NewTreatment, Treatment } from '#api/contract/treatment.ts'
import { newRoutes, versionSeen } from '#api/http/routes.ts'
import { removing, showing } from '#api/records/addresses.ts'
import { gatheredRoutes } from '#api/records/gathered-routes.ts'
import { removeRow, theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { addTreatments } from './add-treatments.ts'
import { presentTreatment } from './present-treatment.ts'

/** `/api/trials/{id}/treatments`. */
export function trialTreatmentRoutes(db: Kysely<Database>) {
  return gatheredRoutes(db, {
    path: '/{id}/treatments',
    owner: 'trial',
    table: 'treatment',
    noun: 'treatment',
    plural: 'treatments',
    whole: 'treatments of a trial',
    sent: NewTreatment,
    shown: Treatment,
    present: presentTreatment,
    write: (tx, trial, items, adding) => addTreatments(tx, trial.id, items, adding),
  })
}

const tags = ['treatments']
const shown = showing({ tags, summary: 'One treatment', shown: Treatment })
const removed = removing({ tags, summary: 'Take a level back; another is given by a new treatment' })

/** `/api/treatments/{id}`. */
export function treatmentRoutes(db: Kysely<Database>) {
  return newRoutes()
    .openapi(shown, async (c) => {
      const row = await theRow(db, 'treatment', c.req.valid('param').id, 'treatment')
      c.header('etag', `"${row.version}"`)
      return c.json(presentTreatment(row), 200)
    })
    .openapi(removed, async (c) => {
      const version = versionSeen(c.req.valid('header'))
      await removeRow(db, 'treatment', c.req.valid('param').id, { version, noun: 'treatment' })
      return c.body(null, 204)
    })
}

export type TrialTreatmentRoutes = ReturnType<typeof trialTreatmentRoutes>
export type TreatmentRoutes = ReturnType<typeof treatmentRoutes>
