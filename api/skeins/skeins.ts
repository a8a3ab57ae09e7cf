import { type Kysely, sql } from 'kysely'
import { skein } from '#api/contract/skein.ts'
import { newRoutes } from '#api/http/routes.ts'
import { addTo } from '#api/records/add.ts'
import { refuseFaults } from '#api/records/adding.ts'
import { addressesOf, addressesUnder, changesOf } from '#api/records/addresses.ts'
import { changeOne } from '#api/records/change.ts'
import { conditionsChecked } from '#api/records/conditions-checked.ts'
import { listOf } from '#api/records/list.ts'
import { plainNoun } from '#api/records/noun.ts'
import { overlaid } from '#api/records/overlaid.ts'
import { presentPlain } from '#api/records/present.ts'
import { removeOne } from '#api/records/remove.ts'
import { showOne } from '#api/records/show.ts'
import { deriveResults } from '#api/results/derive-results.ts'
import { refuseStrangers } from '#db/belonging.ts'
import { skeinsOfTrial } from '#db/losses.ts'
import { refuseIfMeasured } from '#db/measured.ts'
import type { Database } from '#db/tables.ts'
import { addSkeins, circle, faultsOfSkein } from './add-skeins.ts'

/** Pieces that are followed by a code: whole, or cut from another. */
export const skeins = plainNoun({
  table: 'skein',
  noun: 'skein',
  plural: 'skeins',
  measured: false,
  ...skein,
  present: presentPlain(skein),
  owner: 'trial',
  whole: 'skeins of a trial',
  add: (tx, trial, items, adding) => addSkeins(tx, trial.id, items, adding),
  // What lay in its parent's vessels, a part has been through too.
  derive: async (tx, { rows }) => {
    await deriveResults(
      tx,
      rows.flatMap((row) => (row.cutFromId === null ? [] : [row.id])),
    )
  },
  prepare: async (tx, before, sent, doubts) => {
    refuseFaults(faultsOfSkein(overlaid(skeins.present(before), sent), '#'))
    await refuseStrangers(tx, before.trialId, [
      { table: 'skein', id: sent.cutFromId, pointer: '#/cutFromId' },
      { table: 'base', id: sent.baseId, pointer: '#/baseId' },
    ])
    if (sent.cutFromId) await refuseCircle(tx, before.id, sent.cutFromId)
    const found = sent.status !== undefined && sent.status !== 'lost' ? { lostReason: null } : {}
    return { ...(await conditionsChecked(tx, before.trialId, sent, doubts)), ...found }
  },
  follow: async (tx, before, after) => {
    // A skein that is a standard no more leaves every comparison with it.
    if (before.role === 'standard' && after.role !== 'standard' && after.trialId)
      await deriveResults(tx, await skeinsOfTrial(tx, after.trialId))
    return []
  },
  keep: (tx, { id }) =>
    refuseIfMeasured(
      tx,
      { skeinId: id },
      'Something was recorded of this skein, so it stays. Mark it as lost, with the reason.',
    ),
  touches: async (_tx, rows) =>
    rows.flatMap(({ id, cutFromId }) => (cutFromId === null ? [id] : [id, cutFromId])),
  judged: { but: ['code'], of: ({ trialId }) => ({ table: 'trial', id: trialId }) },
})

async function refuseCircle(tx: Kysely<Database>, id: string, parentId: string): Promise<void> {
  const { rows } = await sql<{ id: string }>`with recursive up as (
      select id, cut_from_id from skein where id = ${parentId}
      union
      select skein.id, skein.cut_from_id from skein join up on skein.id = up.cut_from_id
    ) select id from up where id = ${id}`.execute(tx)
  if (rows.length > 0) refuseFaults([circle('#')])
}

const under = addressesUnder('/{id}/skeins', skeins)
const at = { ...addressesOf(skeins), ...changesOf(skeins) }

/** `/api/trials/{id}/skeins`. */
export function trialSkeinRoutes(db: Kysely<Database>) {
  return newRoutes().openapi(under.listed, listOf(db, skeins)).openapi(under.added, addTo(db, skeins))
}

/** `/api/skeins/{id}`. */
export function skeinRoutes(db: Kysely<Database>) {
  return newRoutes()
    .openapi(at.one, showOne(db, skeins))
    .openapi(at.changed, changeOne(db, skeins))
    .openapi(at.removed, removeOne(db, skeins))
}
