import { type Kysely, sql } from 'kysely'
import { dye } from '#api/contract/dye.ts'
import { Problem } from '#api/contract/problem.ts'
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

/** Dyes as they were bought. */
export const dyes = freeNoun({
  table: 'dye',
  noun: 'dye',
  plural: 'dyes',
  measured: false,
  ...dye,
  present: presentPlain(dye),
  add: (tx, _none, items, { at = inItems }) => addRows(tx, 'dye', items, { at }),
  prepare: async (_tx, _before, sent) => sent,
  keep: refuseInStock,
  touches: async () => [],
  derives: false,
})

async function refuseInStock(db: Kysely<Database>, { id }: { readonly id: string }): Promise<void> {
  const { rows } = await sql<{ label: string }>`select label from stock
    where parts @> ${JSON.stringify([{ dyeId: id }])}::jsonb limit 1`.execute(db)
  const [stock] = rows
  if (stock) throw new Problem('still-in-use', `The stock “${stock.label}” is made of this dye, so it stays.`)
}

const { all, added, one, changed, removed } = catalogueAddresses(dyes)

/** `/api/dyes`. */
export function dyeRoutes(db: Kysely<Database>) {
  return newRoutes()
    .openapi(all, listAll(db, dyes))
    .openapi(added, addFree(db, dyes))
    .openapi(one, showOne(db, dyes))
    .openapi(changed, changeOne(db, dyes))
    .openapi(removed, removeOne(db, dyes))
}
