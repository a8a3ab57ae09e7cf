import type { Selectable } from 'kysely'
import type { Stock } from '#api/contract/stock.ts'
import { storedOf } from '#api/records/moments.ts'
import type { StockTable } from '#db/tables.ts'

export function presentStock(row: Selectable<StockTable>): Stock {
  return {
    ...storedOf(row),
    label: row.label,
    parts: row.parts.map((it) => ({ ...it })),
    madeToMl: row.madeToMl,
    strengthPercent: row.strengthPercent,
    madeOn: row.madeOn,
  }
}
