import type { Kysely } from 'kysely'
import { type OpenedEmbedded, openEmbedded } from './pglite-open.ts'
import { openServer } from './server-open.ts'
import type { Database } from './tables.ts'

export type OpenedServer = {
  readonly kind: 'server'
  readonly db: Kysely<Database>
  close(): Promise<void>
}
export type Opened = OpenedEmbedded | OpenedServer

/** Where the records are: a folder for the embedded database, or the address of a PostgreSQL server. */
export type DatabaseSettings = { readonly dataDir: string } | { readonly databaseUrl: string }

/**
 * Opens the records. The same Kysely over the same kind of pool, whichever it is.
 *
 * @throws CannotStart in one plain sentence: folder in use, other version, no server at the address.
 */
export async function openDatabase(
  settings: DatabaseSettings,
  { lost }: { lost?: (error: Error) => void } = {},
): Promise<Opened> {
  if ('databaseUrl' in settings) return openServer(settings.databaseUrl)
  return openEmbedded(settings.dataDir, lost ? { lost } : {})
}
