import { type Kysely, Migrator, sql } from 'kysely'
import { CannotStart } from './cannot-start.ts'
import { copyDatabase } from './database-copy.ts'
import { migrations } from './migrations/all.ts'
import type { Opened } from './open-database.ts'
import type { Database } from './tables.ts'

type Migrations = typeof migrations

/**
 * Brings the tables to what this code expects, forward only. On a server Kysely holds an advisory lock meanwhile,
 * so that two that start at once do not meet; an embedded database with records in it is copied first.
 *
 * @returns The names of the migrations that ran, and the copy that was made.
 * @throws CannotStart when the database was migrated by newer code than this.
 */
export async function migrate(
  opened: Opened,
  { now, list = migrations }: { now: Date; list?: Migrations },
): Promise<{ ran: string[]; copy?: string }> {
  const done = await migrationsDone(opened.db)
  const unknown = done.filter((name) => !(name in list))
  if (unknown.length > 0) {
    throw new CannotStart(
      `This database was last opened by a newer version of Runs Clear (it knows ${unknown.join(', ')}); start that version or a later one.`,
    )
  }
  if (done.length === Object.keys(list).length) return { ran: [] }
  const copy =
    opened.kind === 'embedded' && done.length > 0
      ? await copyDatabase(opened, 'before-migration', { now })
      : undefined
  const ran = await runMigrations(opened.db, list)
  return copy ? { ran, copy } : { ran }
}

/** Runs what is pending; a migration that fails leaves nothing of itself. */
export async function runMigrations(db: Kysely<Database>, list: Migrations = migrations): Promise<string[]> {
  const migrator = new Migrator({ db, provider: { getMigrations: async () => list } })
  const { error, results = [] } = await migrator.migrateToLatest()
  const failed = results.find((it) => it.status === 'Error')
  if (error)
    throw new Error(`The migration ${failed?.migrationName ?? ''} failed: ${(error as Error).message}`, {
      cause: error,
    })
  return results.filter((it) => it.status === 'Success').map((it) => it.migrationName)
}

async function migrationsDone(db: Kysely<Database>): Promise<string[]> {
  const { rows: found } = await sql<{ there: boolean }>`
    select to_regclass('kysely_migration') is not null as there`.execute(db)
  if (!found[0]?.there) return []
  const { rows } = await sql<{ name: string }>`select name from kysely_migration order by name`.execute(db)
  return rows.map((row) => row.name)
}
