import type { Selectable } from 'kysely'
import type { Base } from '#api/contract/base.ts'
import { storedOf } from '#api/records/moments.ts'
import type { BaseTable } from '#db/tables.ts'

export function presentBase(row: Selectable<BaseTable>): Base {
  return {
    ...storedOf(row),
    name: row.name,
    makerLot: row.makerLot,
    composition: row.composition.map((it) => ({ ...it })),
    dyeablePercent: row.dyeablePercent,
    superwash: row.superwash,
    naturalL: row.naturalL,
    naturalA: row.naturalA,
    naturalB: row.naturalB,
  }
}
