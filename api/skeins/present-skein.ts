import type { Selectable } from 'kysely'
import type { Skein } from '#api/contract/skein.ts'
import { momentText, storedOf } from '#api/records/moments.ts'
import type { SkeinTable } from '#db/tables.ts'

export function presentSkein(row: Selectable<SkeinTable>): Skein {
  return {
    ...storedOf(row),
    trialId: row.trialId,
    code: row.code,
    role: row.role,
    cutFromId: row.cutFromId,
    cutAt: momentText(row.cutAt),
    baseId: row.baseId,
    massG: row.massG,
    blueWoolNumber: row.blueWoolNumber,
    fibre: row.fibre,
    conditions: row.conditions,
    status: row.status,
    lostReason: row.lostReason,
  }
}
