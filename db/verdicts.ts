import type { Kysely, Selectable } from 'kysely'
import { theRow } from './rows.ts'
import type { Database, VerdictTable } from './tables.ts'

export type VerdictRow = Selectable<VerdictTable>

/** The verdict that was recorded of one look at one part, if it was. */
export async function verdictOf(
  db: Kysely<Database>,
  { trialId, look, stratum }: { trialId: string; look: number; stratum: string },
): Promise<VerdictRow | undefined> {
  return db
    .selectFrom('verdict')
    .selectAll()
    .where('trialId', '=', trialId)
    .where('look', '=', look)
    .where('stratum', '=', stratum)
    .executeTakeFirst()
}

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
