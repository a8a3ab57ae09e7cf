import pg from 'pg'
import { CannotStart } from './cannot-start.ts'
import { kyselyOver } from './kysely-over.ts'
import type { OpenedServer } from './open-database.ts'
import { valueTypes } from './value-types.ts'

/** The oldest server whose SQL we write. */
const oldest = 15

/** Opens a pool to a PostgreSQL server and asks it for its version, so that a wrong address is known at once. */
export async function openServer(databaseUrl: string): Promise<OpenedServer> {
  const pool = new pg.Pool({
    connectionString: databaseUrl,
    types: valueTypes,
    max: 10,
    connectionTimeoutMillis: 30_000,
    application_name: 'runs-clear',
  })
  // A connection that breaks while idle is replaced by the next query; unheard, it would end the process.
  pool.on('error', (error) => console.error(`A connection to the database broke: ${error.message}`))
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
