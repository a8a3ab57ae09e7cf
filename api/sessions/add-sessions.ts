import type { Kysely } from 'kysely'
import type { NewSession } from '#api/contract/session.ts'
import { type Adding, inItems } from '#api/records/adding.ts'
import { readConditions } from '#api/records/read-conditions.ts'
import { type Added, addRows } from '#db/add-rows.ts'
import type { Database } from '#db/tables.ts'

export type SessionToAdd = Partial<NewSession> & Pick<NewSession, 'label'>

/** Writes sessions of a trial, or shared ones (`trialId` null). */
export async function addSessions(
  tx: Kysely<Database>,
  trialId: string | null,
  sessions: readonly SessionToAdd[],
  { at = inItems, doubts }: Adding = {},
): Promise<Added<'session'>> {
  const conditions = await readConditions(tx, trialId, sessions, { at, doubts })
  const rows = sessions.map((session, index) => ({
    ...session,
    trialId,
    kind: session.kind ?? ('stove' as const),
    conditions: conditions[index] ?? {},
  }))
  return addRows(tx, 'session', rows, { at })
}
