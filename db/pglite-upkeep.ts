import type pg from 'pg'

const everyMinutes = 5
const afterMegabytes = 16

/**
 * What a server does by itself and the embedded database does not: without a checkpoint its log grows for ever,
 * without a vacuum dead rows stay and the planner knows no numbers. Every few minutes, when enough was written.
 * Waits its turn in the pool like any other query, and never keeps the process alive.
 */
export function startUpkeep(pool: pg.Pool): { stop(): Promise<void> } {
  let before: string | undefined
  let running: Promise<void> = Promise.resolve()

  async function look(): Promise<void> {
    const { rows } = await pool.query<{ now: string; written: number }>(
      'select pg_current_wal_lsn()::text as now, pg_wal_lsn_diff(pg_current_wal_lsn(), $1)::float8 as written',
      [before ?? '0/0'],
    )
    const written = rows[0]?.written ?? 0
    if (before !== undefined && written < afterMegabytes * 2 ** 20) return
    await tidyUp(pool)
    before = rows[0]?.now
  }
  const timer = setInterval(() => {
    running = look().catch((error: Error) => console.error(`The database's upkeep failed: ${error.message}`))
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
export async function tidyUp(pool: pg.Pool): Promise<void> {
  await pool.query('vacuum (analyze)')
  await pool.query('checkpoint')
}
