import type { Selectable } from 'kysely'
import type { Dye } from '#api/contract/dye.ts'
import { storedOf } from '#api/records/moments.ts'
import type { DyeTable } from '#db/tables.ts'

export function presentDye(row: Selectable<DyeTable>): Dye {
  return {
    ...storedOf(row),
    name: row.name,
    class: row.class,
    form: row.form,
    batch: row.batch,
    gramsPerTeaspoon: row.gramsPerTeaspoon,
  }
}
