import type { Kysely } from 'kysely'
import { base } from '#api/contract/base.ts'
import type { Doubt } from '#api/contract/one-or-many.ts'
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
import type { Database } from '#db/tables.ts'
import { dyeablePercent } from './dyeable-percent.ts'

/** Under this share of fibre that takes acid dye, the yarn is asked about. */
const fewDyeable = 60

/** Undyed yarns. */
export const bases = freeNoun({
  table: 'base',
  noun: 'base',
  plural: 'bases',
  measured: false,
  ...base,
  present: presentPlain(base),
  add: (tx, _none, items, { at = inItems, doubts }) => {
    const rows = items.map((item, index) => ({ ...item, ...workedOut(item.composition, at(index), doubts) }))
    return addRows(tx, 'base', rows, { at, derived: ['dyeablePercent'] })
  },
  prepare: async (_tx, before, sent, doubts) => ({
    ...sent,
    ...workedOut(sent.composition ?? before.composition, '#', doubts),
  }),
  touches: async () => [],
  derives: false,
})

function workedOut(
  composition: readonly { readonly fibre: string; readonly percent: number }[],
  pointer: string,
  doubts: Doubt[] | undefined,
) {
  const sum = composition.reduce((total, { percent }) => total + percent, 0)
  if (composition.length > 0 && (sum < 99.5 || sum > 100.5)) {
    const detail = `The shares come to ${Number(sum.toFixed(2))} %; they make 100 % together.`
    refuseFaults([{ pointer: `${pointer}/composition`, detail }])
  }
  const dyeable = dyeablePercent(composition)
  if (dyeable !== null && dyeable < fewDyeable) {
    const detail = `Only ${dyeable} % of this yarn takes acid dye. Keep it?`
    doubts?.push({ pointer: `${pointer}/composition`, detail })
  }
  return { dyeablePercent: dyeable }
}

const { all, added, one, changed, removed } = catalogueAddresses(bases)

/** `/api/bases`. */
export function baseRoutes(db: Kysely<Database>) {
  return newRoutes()
    .openapi(all, listAll(db, bases))
    .openapi(added, addFree(db, bases))
    .openapi(one, showOne(db, bases))
    .openapi(changed, changeOne(db, bases))
    .openapi(removed, removeOne(db, bases))
}
