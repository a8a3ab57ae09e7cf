import type { PGlite } from '@electric-sql/pglite'
import { createPgConfig } from '@electric-sql/pglite/node-postgres'
import pg from 'pg'
import { sessionInUtc } from './session-in-utc.ts'
import { valueTypes } from './value-types.ts'

/**
 * An ordinary pool over the embedded database: one client, since there is one session, and every transaction
 * waits its turn for it. `waitMs` ends a wait that would be for ever, as when `db` is used inside its own transaction.
 */
export function pglitePool(database: PGlite, { waitMs }: { waitMs: number }): pg.Pool {
  const pool = new pg.Pool({
    ...createPgConfig(database),
    types: valueTypes,
    onConnect: sessionInUtc,
    idleTimeoutMillis: 0,
    connectionTimeoutMillis: waitMs,
  })
  // Whoever opened the database is told when it stops; unheard here, the same news would end the process at once.
  pool.on('error', () => {})
  return pool
}
