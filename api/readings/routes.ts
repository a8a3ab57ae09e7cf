import type { Kysely } from 'kysely'
import { NewReading, Reading, ReadingWithChanges } from '#api/contract/reading.ts'
import { newRoutes } from '#api/http/routes.ts'
import { inItems } from '#api/records/adding.ts'
import { showing } from '#api/records/addresses.ts'
import { gatheredRoutes } from '#api/records/gathered-routes.ts'
import { comparisonsOfReading, deriveResults } from '#api/results/derive-results.ts'
import { changesOfReading } from '#db/results.ts'
import { theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { addReadings } from './add-readings.ts'
import { presentChange } from './present-change.ts'
import { presentReading } from './present-reading.ts'

/**
 * `/api/trials/{id}/readings`. A reading that cannot be compared with its baseline is kept: the reason comes back
 * among the doubts, and stands with the reading.
 */
export function trialReadingRoutes(db: Kysely<Database>) {
  return gatheredRoutes(db, {
    path: '/{id}/readings',
    owner: 'trial',
    table: 'reading',
    noun: 'reading',
    plural: 'readings',
    whole: 'readings of a trial',
    sent: NewReading,
    shown: Reading,
    present: presentReading,
    write: async (tx, trial, items, { at = inItems, doubts }) => {
      const added = await addReadings(tx, trial.id, items, { at, doubts })
      const skeinIds = [...new Set(added.rows.map((row) => row.skeinId))]
      const places = new Map(added.rows.map((row, index) => [row.id, index]))
      for (const { readingId, reason } of await deriveResults(tx, skeinIds)) {
        const index = places.get(readingId)
        if (index !== undefined) doubts?.push({ pointer: at(index), detail: `Not compared. ${reason}` })
      }
      return added
    },
  })
}

const shown = showing({
  tags: ['readings'],
  summary: 'One reading with its changes, and why one that you would expect was not made',
  shown: ReadingWithChanges,
})

/** `/api/readings/{id}`. */
export function readingRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(shown, async (c) => {
    const row = await theRow(db, 'reading', c.req.valid('param').id, 'reading')
    const changes = await changesOfReading(db, row.id)
    const notCompared = row.superseded ? [] : await comparisonsOfReading(db, row)
    return c.json(
      {
        ...presentReading(row),
        changes: changes.map(presentChange),
        notCompared: notCompared.map(({ basis, reason }) => ({ basis, reason })),
      },
      200,
    )
  })
}

export type TrialReadingRoutes = ReturnType<typeof trialReadingRoutes>
export type ReadingRoutes = ReturnType<typeof readingRoutes>
