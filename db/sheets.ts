import { type Kysely, type Selectable, sql } from 'kysely'
import type { Database, EvidenceSheetTable } from './tables.ts'

export type SheetRow = Selectable<EvidenceSheetTable>

/** The frozen sheets that speak of a trial, newest first. */
export async function sheetsOf(db: Kysely<Database>, trialId: string): Promise<SheetRow[]> {
  return db
    .selectFrom('evidenceSheet')
    .selectAll()
    .where(sql<boolean>`${trialId} = any(trial_ids)`)
    .orderBy('madeAt', 'desc')
    .orderBy('id')
    .execute()
}
