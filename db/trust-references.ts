import { type Kysely, sql } from 'kysely'
import type { Database } from './tables.ts'

/**
 * Takes the references of what is written next on trust, to the end of the transaction, where that is safe: in the
 * embedded database, which has one session, so that nobody can take away meanwhile what was read or made in it. Looking
 * every reference up again would be a quarter of the work of a long table. A server looks them up as always.
 *
 * Only for rows whose references were all made or read in this transaction; nothing may be deleted that others name.
 */
export async function trustReferences(tx: Kysely<Database>): Promise<void> {
  await sql`select set_config('session_replication_role', 'replica', true)
    where version() like '%emscripten%'`.execute(tx)
}
