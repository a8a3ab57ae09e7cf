import pg from 'pg'
import { CannotStart } from './cannot-start.ts'
import { kyselyOver } from './kysely-over.ts'
import type { OpenedServer } from './open-database.ts'
import { sessionInUtc } from './session-in-utc.ts'
import { valueTypes } from './value-types.ts'

/** The oldest server whose SQL we write. */
const oldest = 15

/**
 * Opens a pool to a PostgreSQL server and asks it for its version, so that a wrong address is known at once.
 * When the server goes away later, each use of `db` fails (database-away.ts) until it is back: a connection that broke
 * leaves the pool, and the next use makes a new one.
 *
 * @param settings.waitMs How long a connection may take.
 */
export async function openServer(
  databaseUrl: string,
  { waitMs = 30_000 }: { waitMs?: number } = {},
): Promise<OpenedServer> {
  const pool = new pg.Pool({
    connectionString: databaseUrl,
    types: valueTypes,
    onConnect: sessionInUtc,
    max: 10,
    connectionTimeoutMillis: waitMs,
    application_name: 'runs-clear',
    keepAlive: true,
  })
  tellWhenAway(pool)
  const db = kyselyOver(pool)
  try {
    const { rows } = await pool.query<{ server_version_num: string }>('show server_version_num')
    const major = Math.floor(Number(rows[0]?.server_version_num) / 10_000)
    if (major < oldest)
      throw new CannotStart(
        `The database server is PostgreSQL ${major}; Runs Clear needs ${oldest} or later.`,
      )
  } catch (error) {
    await db.destroy()
    if (error instanceof CannotStart) throw error
    throw new CannotStart(
      `The database server at ${placeOf(databaseUrl)} does not answer: ${reasonOf(error)}.`,
      {
        cause: error,
      },
    )
  }
  return { kind: 'server', db, close: () => db.destroy() }
}

/**
 * Says once that the connections broke, and once that there are new ones. A connection tells it as an error of its own,
 * idle or in use; unheard, that would end the process.
 */
function tellWhenAway(pool: pg.Pool): void {
  let away = false
  function broke(error: Error): void {
    if (!away) console.error(`The connection to the database broke: ${error.message}.`)
    away = true
  }
  pool.on('error', broke)
  pool.on('connect', (client) => {
    client.on('error', broke)
    if (away) console.error('The database answers again.')
    away = false
  })
}

/** Host, port and database of an address, and nothing that is secret in it. */
export function placeOf(databaseUrl: string): string {
  const url = URL.canParse(databaseUrl) ? new URL(databaseUrl) : undefined
  return url?.hostname ? `${url.hostname}:${url.port || 5432}${url.pathname}` : 'DATABASE_URL'
}

// Node tells "refused" for both of localhost's addresses in an error without a message of its own.
function reasonOf(error: unknown): string {
  if (error instanceof AggregateError) return error.errors.map((it: Error) => it.message).join(', ')
  return error instanceof Error ? error.message : String(error)
}
