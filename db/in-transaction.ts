import type { Kysely } from 'kysely'
import type { Database } from './tables.ts'

/** Does something all or nothing: in the transaction that is open already, else in one of its own. */
export function inTransaction<Result>(
  db: Kysely<Database>,
  act: (tx: Kysely<Database>) => Promise<Result>,
): Promise<Result> {
  return db.isTransaction ? act(db) : db.transaction().execute(act)
}
