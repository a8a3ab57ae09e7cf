import type { Kysely } from 'kysely'
import { Base, ChangedBase, NewBase } from '#api/contract/base.ts'
import { refuseFaults } from '#api/records/adding.ts'
import { catalogueRoutes } from '#api/records/catalogue-routes.ts'
import type { Database } from '#db/tables.ts'
import { dyeablePercent } from './dyeable-percent.ts'
import { presentBase } from './present-base.ts'

/** Under this share of fibre that takes acid dye, the yarn is asked about. */
const fewDyeable = 60

/** `/api/bases`: undyed yarns. */
export function baseRoutes(db: Kysely<Database>) {
  return catalogueRoutes(db, {
    table: 'base',
    noun: 'base',
    plural: 'bases',
    sent: NewBase,
    changed: ChangedBase,
    shown: Base,
    present: presentBase,
    derived: ['dyeablePercent'],
    complete: (_db, base, { pointer, doubts }) => {
      const sum = base.composition.reduce((total, { percent }) => total + percent, 0)
      if (base.composition.length > 0 && (sum < 99.5 || sum > 100.5)) {
        const detail = `The shares come to ${Number(sum.toFixed(2))} %; they make 100 % together.`
        refuseFaults([{ pointer: `${pointer}/composition`, detail }])
      }
      const dyeable = dyeablePercent(base.composition)
      if (dyeable !== null && dyeable < fewDyeable) {
        const detail = `Only ${dyeable} % of this yarn takes acid dye. Keep it?`
        doubts.push({ pointer: `${pointer}/composition`, detail })
      }
      return { ...base, dyeablePercent: dyeable }
    },
  })
}

export type BaseRoutes = ReturnType<typeof baseRoutes>
