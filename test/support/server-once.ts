import pg from 'pg'
import type { TestProject } from 'vitest/node'
import { runMigrations } from '#db/migrate.ts'
import { openServer } from '#db/server-open.ts'
import { databaseAt } from './database-at.ts'
import { missingHere } from './missing-here.ts'
import { type RealPostgres, realPostgres } from './real-postgres.ts'
import './provided.ts'

/**
 * Finds or starts a PostgreSQL once and migrates a template in it, of which each worker makes its own database.
 * Nothing but databases of this run's name is touched, and those are dropped at the end.
 */
export default async function serverOnce(project: TestProject): Promise<() => Promise<void>> {
  let server: RealPostgres
  try {
    server = await realPostgres()
  } catch (error) {
    return missingHere(project, (error as Error).message)
  }
  const run = `runs_clear_test_${process.pid}_${Date.now()}`
  await asAdministrator(server.url, `create database ${run} template template0`)
  const opened = await openServer(databaseAt(server.url, run))
  await runMigrations(opened.db)
  await opened.close()
  project.provide('database', { kind: 'server', url: server.url, template: run })
  project.provide('missing', null)
  return async () => {
    await dropAll(server.url, run)
    await server.stop()
  }
}

async function asAdministrator(url: string, statement: string): Promise<void> {
  const client = new pg.Client(url)
  await client.connect()
  await client.query(statement)
  await client.end()
}

async function dropAll(url: string, run: string): Promise<void> {
  const client = new pg.Client(url)
  await client.connect()
  const { rows } = await client.query<{ datname: string }>(
    'select datname from pg_database where starts_with(datname, $1)',
    [run],
  )
  for (const { datname } of rows) await client.query(`drop database "${datname}" with (force)`)
  await client.end()
}
