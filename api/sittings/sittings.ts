import type { Kysely } from 'kysely'
import { sitting, sittingQuery } from '#api/contract/sitting.ts'
import { newRoutes } from '#api/http/routes.ts'
import { addFree } from '#api/records/add.ts'
import { addressesOf, changesOf, freeAddresses, listing } from '#api/records/addresses.ts'
import { changeOne } from '#api/records/change.ts'
import { freeNoun, type RowOf } from '#api/records/noun.ts'
import { presentPlain } from '#api/records/present.ts'
import { removeOne } from '#api/records/remove.ts'
import { showOne } from '#api/records/show.ts'
import { refuseStrangers } from '#db/belonging.ts'
import { skeinsReadIn } from '#db/losses.ts'
import { pageOf } from '#db/pages.ts'
import { listRows } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import { addSittings } from './add-sittings.ts'

/** Occasions of measuring. A change of settings changes what may be compared. */
export const sittings = freeNoun({
  table: 'sitting',
  noun: 'sitting',
  plural: 'sittings',
  measured: false,
  ...sitting,
  present: presentPlain(sitting),
  add: (tx, _none, items, { at }) => addSittings(tx, null, items, at ? { at } : {}),
  // Nothing was read in a new sitting yet.
  derive: async () => {},
  prepare: async (tx, before, sent) => {
    await refuseStrangers(tx, before.trialId, [
      { table: 'skein', id: sent.inFrameStandardId, pointer: '#/inFrameStandardId' },
      { table: 'instrument', id: sent.instrumentId, pointer: '#/instrumentId' },
    ])
    return sent
  },
  touches: (tx, rows) =>
    skeinsReadIn(
      tx,
      rows.map((row) => row.id),
    ),
  judged: { but: ['label'], of: ({ trialId }) => ({ table: 'trial', id: trialId }) },
})

const listed = listing('/', {
  tags: ['sittings'],
  summary: 'The sittings, oldest first; with `trialId` those of a trial and the shared ones',
  where: {},
  query: sittingQuery,
  shown: sittings.shown,
})
const { added } = freeAddresses(sittings, { listed: '', added: 'Add a sitting, or several' })
const at = { ...addressesOf(sittings), ...changesOf(sittings) }

/** `/api/sittings`. */
export function sittingRoutes(db: Kysely<Database>) {
  return newRoutes()
    .openapi(listed, async (c) => {
      const { trialId, ...page } = c.req.valid('query')
      const { rows, next } = trialId
        ? await pageOf<RowOf<'sitting'>>(db, 'sittings of a trial', trialId, page)
        : await listRows(db, 'sitting', page)
      return c.json({ items: rows.map(sittings.present), next }, 200)
    })
    .openapi(added, addFree(db, sittings))
    .openapi(at.one, showOne(db, sittings))
    .openapi(at.changed, changeOne(db, sittings))
    .openapi(at.removed, removeOne(db, sittings))
}
