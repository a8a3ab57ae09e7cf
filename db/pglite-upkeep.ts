import { type Kysely, sql } from 'kysely'
import type { Database } from './tables.ts'

const everyMinutes = 1
/** The pool's own words when nobody gave way in time. */
const waitedTooLong = 'timeout exceeded when trying to connect'
const afterMegabytes = 16

/**
 * What a server does by itself and the embedded database does not: without a checkpoint its log grows for ever,
 * without a vacuum dead rows stay and the planner knows no numbers. Every minute in which enough was written.
 * Waits its turn in the pool like any other query, and never keeps the process alive.
 */
export function startUpkeep(db: Kysely<Database>): { stop(): Promise<void> } {
  let before: string | undefined
  let running: Promise<void> = Promise.resolve()

  async function look(): Promise<void> {
    const { rows } = await sql<{ now: string; written: number }>`
      select pg_current_wal_lsn()::text as now,
        pg_wal_lsn_diff(pg_current_wal_lsn(), ${before ?? '0/0'}::pg_lsn)::float8 as written`.execute(db)
    const written = rows[0]?.written ?? 0
    if (before !== undefined && written < afterMegabytes * 2 ** 20) return
    await tidyUp(db)
    before = rows[0]?.now
  }
  const timer = setInterval(() => {
    running = look().catch((error: Error) => {
      // Something long holds the database, such as a large table: the next minute does as well.
      if (error.message === waitedTooLong) return
      console.error(`The database's upkeep failed: ${error.message}`)
    })
  }, everyMinutes * 60_000)
  timer.unref()
  return {
    stop() {
      clearInterval(timer)
      return running
    },
  }
}

/** Vacuums, counts anew for the planner and writes the log into the tables: also worth doing after a large import. */
export async function tidyUp(db: Kysely<Database>): Promise<void> {
  await sql`vacuum (analyze)`.execute(db)
  await sql`checkpoint`.execute(db)
}
