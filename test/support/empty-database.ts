import { readFileSync } from 'node:fs'
import { PGlite } from '@electric-sql/pglite'
import { type Kysely, sql } from 'kysely'
import pg from 'pg'
import { inject } from 'vitest'
import { kyselyOver } from '#db/kysely-over.ts'
import { pglitePool } from '#db/pglite-pool.ts'
import { openServer } from '#db/server-open.ts'
import type { Database } from '#db/tables.ts'
import { databaseAt } from './database-at.ts'
import './provided.ts'

// One database for each worker, opened by the first test that asks; it ends with the worker.
const kept = globalThis as { runsClearTestDatabase?: Promise<Kysely<Database>> }

/**
 * A migrated database without a single row, of the kind that the project tests: `embedded` or `server`.
 * The same one each time, emptied: hold nothing of it from one test to the next.
 */
export async function emptyDatabase(): Promise<Kysely<Database>> {
  kept.runsClearTestDatabase ??= open()
  const db = await kept.runsClearTestDatabase
  await empty(db)
  return db
}

/** Which of the two the project tests. */
export function databaseKind(): 'embedded' | 'server' {
  return inject('database').kind
}

async function open(): Promise<Kysely<Database>> {
  const database = inject('database')
  if (database.kind === 'embedded') {
    const pglite = await PGlite.create({ loadDataDir: new Blob([readFileSync(database.copy)]) })
    return kyselyOver(pglitePool(pglite, { waitMs: 5000 }))
  }
  const name = `${database.template}_${process.pid}_${process.env.VITEST_POOL_ID ?? 0}_${Date.now()}`
  const client = new pg.Client(database.url)
  await client.connect()
  await client.query(`create database ${name} template ${database.template}`)
  await client.end()
  const opened = await openServer(databaseAt(database.url, name))
  return opened.db
}

async function empty(db: Kysely<Database>): Promise<void> {
  const { rows: tables } = await sql<{ name: string }>`
    select quote_ident(tablename) as name from pg_tables
    where schemaname = 'public' and not starts_with(tablename, 'kysely_')`.execute(db)
  const asked = tables.map(({ name }) => `select '${name}' as name where exists (select from ${name})`)
  const { rows: filled } = await sql<{ name: string }>`${sql.raw(asked.join(' union all '))}`.execute(db)
  if (filled.length > 0)
    await sql`truncate ${sql.raw(filled.map(({ name }) => name).join(', '))} cascade`.execute(db)
}
