import type { Kysely } from 'kysely'
import { NewOutcome, Outcome } from '#api/contract/outcome.ts'
import { newRoutes } from '#api/http/routes.ts'
import { showing } from '#api/records/addresses.ts'
import { gatheredRoutes } from '#api/records/gathered-routes.ts'
import { deriveResults } from '#api/results/derive-results.ts'
import { theRow } from '#db/rows.ts'
import { skeinsOfThings } from '#db/skeins-of-things.ts'
import type { Database } from '#db/tables.ts'
import { addOutcomes } from './add-outcomes.ts'
import { presentOutcome } from './present-outcome.ts'

/** `/api/trials/{id}/outcomes`. */
export function trialOutcomeRoutes(db: Kysely<Database>) {
  return gatheredRoutes(db, {
    path: '/{id}/outcomes',
    owner: 'trial',
    table: 'outcome',
    noun: 'outcome',
    plural: 'outcomes',
    whole: 'outcomes of a trial',
    sent: NewOutcome,
    shown: Outcome,
    present: presentOutcome,
    write: async (tx, trial, items, adding) => {
      const added = await addOutcomes(tx, trial.id, items, adding)
      await deriveResults(tx, await skeinsOfThings(tx, added.rows))
      return added
    },
  })
}

const shown = showing({ tags: ['outcomes'], summary: 'One outcome', shown: Outcome })

/** `/api/outcomes/{id}`. */
export function outcomeRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(shown, async (c) => {
    const row = await theRow(db, 'outcome', c.req.valid('param').id, 'outcome')
    return c.json(presentOutcome(row), 200)
  })
}

export type TrialOutcomeRoutes = ReturnType<typeof trialOutcomeRoutes>
export type OutcomeRoutes = ReturnType<typeof outcomeRoutes>
