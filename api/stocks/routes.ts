import type { Kysely } from 'kysely'
import { doubtOf, refusalOf } from '#api/contract/bounds.ts'
import { ChangedStock, NewStock, Stock } from '#api/contract/stock.ts'
import { refuseFaults } from '#api/records/adding.ts'
import { catalogueRoutes } from '#api/records/catalogue-routes.ts'
import { refuseStrangers } from '#db/belonging.ts'
import type { Database } from '#db/tables.ts'
import { presentStock } from './present-stock.ts'

/** `/api/stocks`: dye solutions, with their strength. */
export function stockRoutes(db: Kysely<Database>) {
  return catalogueRoutes(db, {
    table: 'stock',
    noun: 'stock',
    plural: 'stocks',
    sent: NewStock,
    changed: ChangedStock,
    shown: Stock,
    present: presentStock,
    derived: ['strengthPercent'],
    complete: async (tx, stock, { pointer, doubts }) => {
      await refuseStrangers(
        tx,
        undefined,
        stock.parts.map(({ dyeId }, index) => ({
          table: 'dye' as const,
          id: dyeId,
          pointer: `${pointer}/parts/${index}/dyeId`,
        })),
      )
      const grams = stock.parts.reduce((sum, part) => sum + part.grams, 0)
      const strengthPercent = (grams / stock.madeToMl) * 100
      const refused = refusalOf('stockStrength', strengthPercent)
      if (refused) refuseFaults([{ pointer: `${pointer}/madeToMl`, detail: refused }])
      const doubt = doubtOf('stockStrength', strengthPercent)
      if (doubt) doubts.push({ pointer: `${pointer}/madeToMl`, detail: doubt })
      return { ...stock, strengthPercent }
    },
  })
}

export type StockRoutes = ReturnType<typeof stockRoutes>
