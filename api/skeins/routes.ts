import { type Kysely, sql } from 'kysely'
import { ChangedSkein, NewSkein, Skein } from '#api/contract/skein.ts'
import { refuseFaults } from '#api/records/adding.ts'
import { changedConditions } from '#api/records/changed.ts'
import { gatheredRoutes } from '#api/records/gathered-routes.ts'
import { overlaid } from '#api/records/overlaid.ts'
import { recordRoutes } from '#api/records/record-routes.ts'
import { deriveResults } from '#api/results/derive-results.ts'
import { refuseStrangers } from '#db/belonging.ts'
import { skeinsOfTrial } from '#db/losses.ts'
import { refuseIfMeasured } from '#db/measured.ts'
import type { Database } from '#db/tables.ts'
import { addSkeins, circle, faultsOfSkein } from './add-skeins.ts'
import { presentSkein } from './present-skein.ts'

/** `/api/trials/{id}/skeins`. */
export function trialSkeinRoutes(db: Kysely<Database>) {
  return gatheredRoutes(db, {
    path: '/{id}/skeins',
    owner: 'trial',
    table: 'skein',
    noun: 'skein',
    plural: 'skeins',
    whole: 'skeins of a trial',
    sent: NewSkein,
    shown: Skein,
    present: presentSkein,
    write: async (tx, trial, items, adding) => {
      const added = await addSkeins(tx, trial.id, items, adding)
      // What lay in its parent's vessels, a part has been through too.
      const parts = added.rows.filter((row) => row.cutFromId !== null)
      await deriveResults(
        tx,
        parts.map((row) => row.id),
      )
      return added
    },
  })
}

/** `/api/skeins/{id}`. */
export function skeinRoutes(db: Kysely<Database>) {
  return recordRoutes(db, {
    table: 'skein',
    noun: 'skein',
    plural: 'skeins',
    changed: ChangedSkein,
    shown: Skein,
    present: presentSkein,
    prepare: async (tx, before, sent, doubts) => {
      const after = overlaid(before, sent)
      const { code, role, cutFromId, blueWoolNumber, status, lostReason } = after
      const cutAt = after.cutAt === null ? null : new Date(after.cutAt).toISOString()
      refuseFaults(faultsOfSkein({ code, role, cutFromId, cutAt, blueWoolNumber, status, lostReason }, '#'))
      await refuseStrangers(tx, before.trialId, [
        { table: 'skein', id: sent.cutFromId, pointer: '#/cutFromId' },
        { table: 'base', id: sent.baseId, pointer: '#/baseId' },
      ])
      if (sent.cutFromId) await refuseCircle(tx, before.id, sent.cutFromId)
      const found = sent.status !== undefined && sent.status !== 'lost' ? { lostReason: null } : {}
      return { ...sent, ...found, ...(await changedConditions(tx, before.trialId, sent, doubts)) }
    },
    follow: async (tx, before, after) => {
      // A skein that is a standard no more leaves every comparison with it.
      if (before.role === 'standard' && after.role !== 'standard' && after.trialId)
        await deriveResults(tx, await skeinsOfTrial(tx, after.trialId))
    },
    keep: (tx, { id }) =>
      refuseIfMeasured(
        tx,
        { skeinId: id },
        'Something was recorded of this skein, so it stays. Mark it as lost, with the reason.',
      ),
    touched: async (_tx, { id, cutFromId }) => (cutFromId === null ? [id] : [id, cutFromId]),
  })
}

async function refuseCircle(tx: Kysely<Database>, id: string, parentId: string): Promise<void> {
  const { rows } = await sql<{ id: string }>`with recursive up as (
      select id, cut_from_id from skein where id = ${parentId}
      union
      select skein.id, skein.cut_from_id from skein join up on skein.id = up.cut_from_id
    ) select id from up where id = ${id}`.execute(tx)
  if (rows.length > 0) refuseFaults([circle('#')])
}

export type TrialSkeinRoutes = ReturnType<typeof trialSkeinRoutes>
export type SkeinRoutes = ReturnType<typeof skeinRoutes>
