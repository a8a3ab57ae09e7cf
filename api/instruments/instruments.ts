import type { Kysely } from 'kysely'
import { instrument } from '#api/contract/instrument.ts'
import { newRoutes } from '#api/http/routes.ts'
import { addFree } from '#api/records/add.ts'
import { inItems } from '#api/records/adding.ts'
import { catalogueAddresses } from '#api/records/addresses.ts'
import { changeOne } from '#api/records/change.ts'
import { listAll } from '#api/records/list.ts'
import { freeNoun } from '#api/records/noun.ts'
import { presentPlain } from '#api/records/present.ts'
import { removeOne } from '#api/records/remove.ts'
import { showOne } from '#api/records/show.ts'
import { addRows } from '#db/add-rows.ts'
import type { Database } from '#db/tables.ts'

/** Ways of measuring, with their noise. */
export const instruments = freeNoun({
  table: 'instrument',
  noun: 'instrument',
  plural: 'instruments',
  measured: false,
  ...instrument,
  present: presentPlain(instrument),
  add: (tx, _none, items, { at = inItems }) => addRows(tx, 'instrument', items, { at }),
  prepare: async (_tx, _before, sent) => sent,
  touches: async () => [],
  derives: false,
})

const { all, added, one, changed, removed } = catalogueAddresses(instruments)

/** `/api/instruments`. */
export function instrumentRoutes(db: Kysely<Database>) {
  return newRoutes()
    .openapi(all, listAll(db, instruments))
    .openapi(added, addFree(db, instruments))
    .openapi(one, showOne(db, instruments))
    .openapi(changed, changeOne(db, instruments))
    .openapi(removed, removeOne(db, instruments))
}
