import type { Kysely } from 'kysely'
import { NewRinse, Rinse } from '#api/contract/rinse.ts'
import { newRoutes } from '#api/http/routes.ts'
import { showing } from '#api/records/addresses.ts'
import { gatheredRoutes } from '#api/records/gathered-routes.ts'
import { deriveResults } from '#api/results/derive-results.ts'
import { theRow } from '#db/rows.ts'
import { skeinsOfThings } from '#db/skeins-of-things.ts'
import type { Database } from '#db/tables.ts'
import { addRinses } from './add-rinses.ts'
import { presentRinse } from './present-rinse.ts'

/** `/api/trials/{id}/rinses`. */
export function trialRinseRoutes(db: Kysely<Database>) {
  return gatheredRoutes(db, {
    path: '/{id}/rinses',
    owner: 'trial',
    table: 'rinse',
    noun: 'rinse',
    plural: 'rinses',
    whole: 'rinses of a trial',
    sent: NewRinse,
    shown: Rinse,
    present: presentRinse,
    write: async (tx, trial, items, adding) => {
      const added = await addRinses(tx, trial.id, items, adding)
      await deriveResults(tx, await skeinsOfThings(tx, added.rows))
      return added
    },
  })
}

const shown = showing({ tags: ['rinses'], summary: 'One rinse', shown: Rinse })

/** `/api/rinses/{id}`. */
export function rinseRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(shown, async (c) => {
    const row = await theRow(db, 'rinse', c.req.valid('param').id, 'rinse')
    return c.json(presentRinse(row), 200)
  })
}

export type TrialRinseRoutes = ReturnType<typeof trialRinseRoutes>
export type RinseRoutes = ReturnType<typeof rinseRoutes>
