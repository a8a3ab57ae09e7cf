import { type Kysely, sql } from 'kysely'
import { ChangedDye, Dye, NewDye } from '#api/contract/dye.ts'
import { Problem } from '#api/contract/problem.ts'
import { catalogueRoutes } from '#api/records/catalogue-routes.ts'
import type { Database } from '#db/tables.ts'
import { presentDye } from './present-dye.ts'

/** `/api/dyes`: dyes as they were bought. */
export function dyeRoutes(db: Kysely<Database>) {
  return catalogueRoutes(db, {
    table: 'dye',
    noun: 'dye',
    plural: 'dyes',
    sent: NewDye,
    changed: ChangedDye,
    shown: Dye,
    present: presentDye,
    complete: (_db, dye) => dye,
    keep: refuseInStock,
  })
}

async function refuseInStock(db: Kysely<Database>, id: string): Promise<void> {
  const { rows } = await sql<{ label: string }>`select label from stock
    where parts @> ${JSON.stringify([{ dyeId: id }])}::jsonb limit 1`.execute(db)
  const [stock] = rows
  if (stock) throw new Problem('still-in-use', `The stock “${stock.label}” is made of this dye, so it stays.`)
}

export type DyeRoutes = ReturnType<typeof dyeRoutes>
