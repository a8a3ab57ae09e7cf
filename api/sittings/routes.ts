import { type Kysely, type Selectable, sql } from 'kysely'
import { sentAs } from '#api/contract/one-or-many.ts'
import { ChangedSitting, NewSitting, Sitting, sittingQuery } from '#api/contract/sitting.ts'
import { newRoutes } from '#api/http/routes.ts'
import { adding, listing } from '#api/records/addresses.ts'
import { keptAs } from '#api/records/kept.ts'
import { recordRoutes } from '#api/records/record-routes.ts'
import { refuseStrangers } from '#db/belonging.ts'
import { pageOf } from '#db/pages.ts'
import { listRows } from '#db/rows.ts'
import type { Database, SittingTable } from '#db/tables.ts'
import { writing } from '#db/writing.ts'
import { addSittings } from './add-sittings.ts'
import { presentSitting } from './present-sitting.ts'

const tags = ['sittings']
const listed = listing('/', {
  tags,
  summary: 'The sittings, oldest first; with `trialId` those of a trial and the shared ones',
  where: {},
  query: sittingQuery,
  shown: Sitting,
})
const added = adding('/', {
  tags,
  summary: 'Add a sitting, or several',
  where: {},
  sent: NewSitting,
  shown: Sitting,
})

/** `/api/sittings`: occasions of measuring. A change of settings changes what may be compared. */
export function sittingRoutes(db: Kysely<Database>) {
  return newRoutes()
    .openapi(listed, async (c) => {
      const { trialId, ...page } = c.req.valid('query')
      const { rows, next } = trialId
        ? await pageOf<Selectable<SittingTable>>(db, 'sittings of a trial', trialId, page)
        : await listRows(db, 'sitting', page)
      return c.json({ items: rows.map(presentSitting), next }, 200)
    })
    .openapi(added, async (c) => {
      const sent = sentAs(c.req.valid('json'))
      const { rows, madeN } = await writing(db, (tx) => addSittings(tx, null, sent.items, { at: sent.at }))
      const kept = keptAs(sent, { rows }, presentSitting)
      return madeN > 0 ? c.json(kept, 201) : c.json(kept, 200)
    })
    .route('/', oneSitting(db))
}

function oneSitting(db: Kysely<Database>) {
  return recordRoutes(db, {
    table: 'sitting',
    noun: 'sitting',
    plural: 'sittings',
    changed: ChangedSitting,
    shown: Sitting,
    present: presentSitting,
    prepare: async (tx, before, sent) => {
      await refuseStrangers(tx, before.trialId, [
        { table: 'skein', id: sent.inFrameStandardId, pointer: '#/inFrameStandardId' },
        { table: 'instrument', id: sent.instrumentId, pointer: '#/instrumentId' },
      ])
      return sent
    },
    touched: async (tx, { id }) => {
      const { rows } = await sql<{ id: string }>`select distinct skein_id as id from reading
        where sitting_id = ${id}`.execute(tx)
      return rows.map((row) => row.id)
    },
  })
}

export type SittingRoutes = ReturnType<typeof sittingRoutes>
