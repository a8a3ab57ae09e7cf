import type { Selectable } from 'kysely'
import type { Placement } from '#api/contract/placement.ts'
import { momentText, storedOf } from '#api/records/moments.ts'
import type { PlacementTable } from '#db/tables.ts'

export function presentPlacement(row: Selectable<PlacementTable>): Placement {
  return {
    ...storedOf(row),
    skeinId: row.skeinId,
    vesselId: row.vesselId,
    place: row.place,
    covered: row.covered,
    inAt: momentText(row.inAt),
    outAt: momentText(row.outAt),
  }
}
