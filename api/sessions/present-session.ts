import type { Selectable } from 'kysely'
import type { Session } from '#api/contract/session.ts'
import { storedOf } from '#api/records/moments.ts'
import type { SessionTable } from '#db/tables.ts'

export function presentSession(row: Selectable<SessionTable>): Session {
  return {
    ...storedOf(row),
    trialId: row.trialId,
    kind: row.kind,
    heldOn: row.heldOn,
    label: row.label,
    place: row.place,
    altitudeM: row.altitudeM,
    waterAlkalinityMgL: row.waterAlkalinityMgL,
    conditions: row.conditions,
    note: row.note,
  }
}
