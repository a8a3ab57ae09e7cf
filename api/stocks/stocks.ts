import type { Kysely } from 'kysely'
import { doubtOf, refusalOf } from '#api/contract/bounds.ts'
import type { Doubt } from '#api/contract/one-or-many.ts'
import { stock } from '#api/contract/stock.ts'
import { newRoutes } from '#api/http/routes.ts'
import { addFree } from '#api/records/add.ts'
import { inItems, refuseFaults } from '#api/records/adding.ts'
import { catalogueAddresses } from '#api/records/addresses.ts'
import { changeOne } from '#api/records/change.ts'
import { listAll } from '#api/records/list.ts'
import { freeNoun } from '#api/records/noun.ts'
import { presentPlain } from '#api/records/present.ts'
import { removeOne } from '#api/records/remove.ts'
import { showOne } from '#api/records/show.ts'
import { addRows } from '#db/add-rows.ts'
import { refuseStrangers } from '#db/belonging.ts'
import type { Database } from '#db/tables.ts'

/** Dye solutions, with their strength. */
export const stocks = freeNoun({
  table: 'stock',
  noun: 'stock',
  plural: 'stocks',
  measured: false,
  ...stock,
  present: presentPlain(stock),
  add: async (tx, _none, items, { at = inItems, doubts }) => {
    const rows: ((typeof items)[number] & Awaited<ReturnType<typeof workedOut>>)[] = []
    for (const [index, item] of items.entries())
      rows.push({ ...item, ...(await workedOut(tx, item, at(index), doubts)) })
    return addRows(tx, 'stock', rows, { at, derived: ['strengthPercent'] })
  },
  prepare: async (tx, before, sent, doubts) => ({
    ...sent,
    ...(await workedOut(
      tx,
      { parts: sent.parts ?? before.parts, madeToMl: sent.madeToMl ?? before.madeToMl },
      '#',
      doubts,
    )),
  }),
  touches: async () => [],
  derives: false,
})

type Made = {
  readonly parts: readonly { readonly dyeId: string; readonly grams: number }[]
  readonly madeToMl: number
}

async function workedOut(
  tx: Kysely<Database>,
  { parts, madeToMl }: Made,
  pointer: string,
  doubts: Doubt[] | undefined,
) {
  await refuseStrangers(
    tx,
    undefined,
    parts.map(({ dyeId }, index) => ({
      table: 'dye',
      id: dyeId,
      pointer: `${pointer}/parts/${index}/dyeId`,
    })),
  )
  const grams = parts.reduce((sum, part) => sum + part.grams, 0)
  const strengthPercent = (grams / madeToMl) * 100
  const refused = refusalOf('stockStrength', strengthPercent)
  if (refused) refuseFaults([{ pointer: `${pointer}/madeToMl`, detail: refused }])
  const doubt = doubtOf('stockStrength', strengthPercent)
  if (doubt) doubts?.push({ pointer: `${pointer}/madeToMl`, detail: doubt })
  return { strengthPercent }
}

const { all, added, one, changed, removed } = catalogueAddresses(stocks)

/** `/api/stocks`. */
export function stockRoutes(db: Kysely<Database>) {
  return newRoutes()
    .openapi(all, listAll(db, stocks))
    .openapi(added, addFree(db, stocks))
    .openapi(one, showOne(db, stocks))
    .openapi(changed, changeOne(db, stocks))
    .openapi(removed, removeOne(db, stocks))
}
