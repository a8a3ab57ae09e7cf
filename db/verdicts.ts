import type { Kysely, Selectable } from 'kysely'
import { theRow } from './rows.ts'
import type { Database, VerdictTable } from './tables.ts'

export type VerdictRow = Selectable<VerdictTable>

/** The verdicts that were declared in a trial, first look first. */
export async function verdictsOf(db: Kysely<Database>, trialId: string): Promise<VerdictRow[]> {
  await theRow(db, 'trial', trialId, 'trial')
  return db
    .selectFrom('verdict')
    .selectAll()
    .where('trialId', '=', trialId)
    .orderBy('look')
    .orderBy('declaredAt')
    .execute()
}
