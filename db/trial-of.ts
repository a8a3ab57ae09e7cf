import type { Kysely } from 'kysely'
import { trialsOf } from './belonging.ts'
import type { Database } from './tables.ts'

/** The trial that a vessel's session belongs to; null for a shared one. */
export async function trialOfVessel(db: Kysely<Database>, vesselId: string): Promise<string | null> {
  return (await trialsOf(db, 'vessel', [vesselId])).get(vesselId) ?? null
}
