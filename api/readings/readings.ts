import type { Kysely } from 'kysely'
import { ReadingWithChanges, reading } from '#api/contract/reading.ts'
import { newRoutes } from '#api/http/routes.ts'
import { addTo } from '#api/records/add.ts'
import { inItems } from '#api/records/adding.ts'
import { addressesUnder, showing } from '#api/records/addresses.ts'
import { listOf } from '#api/records/list.ts'
import { ownedNoun } from '#api/records/noun.ts'
import { presentMeasured } from '#api/records/present.ts'
import { comparisonsOfReading, deriveResults } from '#api/results/derive-results.ts'
import { changesOfReading } from '#db/results.ts'
import { theRow } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { addReadings } from './add-readings.ts'
import { presentChange } from './present-change.ts'

/**
 * Colours that were read. A reading that cannot be compared with its baseline is kept: the reason comes back among the
 * doubts, and stands with the reading.
 */
export const readings = ownedNoun({
  table: 'reading',
  noun: 'reading',
  plural: 'readings',
  measured: true,
  ...reading,
  present: presentMeasured(reading),
  owner: 'trial',
  whole: 'readings of a trial',
  add: (tx, trial, items, adding) => addReadings(tx, trial.id, items, adding),
  derive: async (tx, { rows }, { at = inItems, doubts }) => {
    const places = new Map(rows.map((row, index) => [row.id, index]))
    for (const { readingId, reason } of await deriveResults(tx, await readings.touches(tx, rows))) {
      const index = places.get(readingId)
      if (index !== undefined) doubts?.push({ pointer: at(index), detail: `Not compared. ${reason}` })
    }
  },
  touches: async (_tx, rows) => [...new Set(rows.map((row) => row.skeinId))],
  judged: { but: [], of: ({ skeinId }) => ({ table: 'skein', id: skeinId }) },
})

const under = addressesUnder('/{id}/readings', readings)
const one = showing({
  tags: ['readings'],
  summary: 'One reading with its changes, and why one that you would expect was not made',
  shown: ReadingWithChanges,
})

/** `/api/trials/{id}/readings`. */
export function trialReadingRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(under.listed, listOf(db, readings)).openapi(under.added, addTo(db, readings))
}

/** `/api/readings/{id}`. */
export function readingRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(one, async (c) => {
    const row = await theRow(db, 'reading', c.req.valid('param').id, 'reading')
    const changes = await changesOfReading(db, row.id)
    const notCompared = row.superseded ? [] : await comparisonsOfReading(db, row)
    return c.json(
      {
        ...readings.present(row),
        changes: changes.map(presentChange),
        notCompared: notCompared.map(({ basis, reason }) => ({ basis, reason })),
      },
      200,
    )
  })
}
