import { spawnSync } from 'node:child_process'
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { sql } from 'kysely'
import { expect, onTestFinished, test } from 'vitest'
import { copyDatabase, restoreCopy } from '#db/database-copy.ts'
import { migrate } from '#db/migrate.ts'
import { migrations } from '#db/migrations/all.ts'
import { openEmbedded } from '#db/pglite-open.ts'
import { tidyUp } from '#db/pglite-upkeep.ts'
import { builtTool } from '#test/support/built-tool.ts'
import { newDataDir, temporaryFolder } from '#test/support/temporary-folder.ts'

const now = new Date('2026-03-29T10:20:30Z')

async function opened(
  dataDir: string,
  ...options: Parameters<typeof openEmbedded> extends [string, ...infer Rest] ? Rest : never
) {
  const it = await openEmbedded(dataDir, ...options)
  onTestFinished(() => it.close())
  return it
}

test('what was written is there after closing and opening', async () => {
  const dataDir = temporaryFolder()
  const first = await openEmbedded(dataDir)
  expect(await migrate(first, { now })).toEqual({ ran: Object.keys(migrations) })
  await first.db.insertInto('base').values({ name: 'Merino' }).execute()
  await first.close()

  const { db } = await opened(dataDir)
  expect(await db.selectFrom('base').select('name').execute()).toEqual([{ name: 'Merino' }])
})

test('a second opener is refused and the first goes on unharmed', async () => {
  const dataDir = newDataDir()
  const { db } = await opened(dataDir)
  await expect(openEmbedded(dataDir)).rejects.toThrow(
    `The data folder ${dataDir} is in use by process ${process.pid}`,
  )
  const { rows } = await sql`select 1 as one`.execute(db)
  expect(rows).toEqual([{ one: 1 }])
})

test('a long query does not stop the loop', async () => {
  const { db } = await opened(newDataDir())
  let turns = 0
  let counting = true
  const count = (): void => {
    turns++
    if (counting) setImmediate(count)
  }
  count()
  await sql`select count(*) from generate_series(1, 1000000)`.execute(db)
  counting = false
  // On the loop's own thread the query would leave room for a handful.
  expect(turns).toBeGreaterThan(1000)
})

test('tidying up counts the rows for the planner, and the log begins anew', async () => {
  const { db } = await opened(newDataDir())
  await sql`insert into base (name) select 'base ' || i from generate_series(1, 1000) as i`.execute(db)
  const state = async () => {
    const { rows } = await sql<{ counted: number; logged: number }>`
      select reltuples::int as counted, (pg_current_wal_lsn() - redo_lsn)::int as logged
      from pg_class, pg_control_checkpoint() where relname = 'base'`.execute(db)
    return rows[0] ?? { counted: Number.NaN, logged: Number.NaN }
  }
  const before = await state()
  // -1: never counted; 0: counted while it was empty, where making the folder took longer than a minute.
  expect(before.counted).toBeLessThanOrEqual(0)
  await tidyUp(db)
  const after = await state()
  expect(after.counted).toBe(1000)
  expect(after.logged).toBeLessThan(before.logged)
})

test('a folder of another version of PostgreSQL is refused before it is touched', async () => {
  const dataDir = temporaryFolder()
  mkdirSync(join(dataDir, 'records'))
  writeFileSync(join(dataDir, 'records', 'PG_VERSION'), '17\n')
  await expect(openEmbedded(dataDir)).rejects.toThrow(
    `The database in ${join(dataDir, 'records')} was written by PostgreSQL 17, and this version of Runs Clear reads 18`,
  )
  expect(readdirSync(join(dataDir, 'records'))).toEqual(['PG_VERSION'])
})

test('this version of the code reads what it writes', () => {
  expect(readFileSync(join(newDataDir(), 'records', 'PG_VERSION'), 'utf8').trim()).toBe('18')
})

test('a commit reaches the disk: every one of ten is followed by an fsync of the system', () => {
  const folder = temporaryFolder()
  const file = (name: string): string => pathToFileURL(join(builtTool, 'db', name)).href
  const program = `
    const { openEmbedded } = await import('${file('pglite-open.js')}')
    const { writeFileSync } = await import('node:fs')
    const { sql } = await import('${import.meta.resolve('kysely')}')
    const { db } = await openEmbedded(${JSON.stringify(newDataDir())})
    await sql\`create table note (n int)\`.execute(db)
    writeFileSync('begin', '')
    for (let n = 0; n < 10; n++) await sql\`insert into note values (\${n})\`.execute(db)
    writeFileSync('end', '')
    process.exit(0)`
  const flags = ['--trace-event-categories', 'node.fs.sync', '--input-type=module', '-e', program]
  const run = spawnSync(process.execPath, flags, { cwd: folder, encoding: 'utf8' })
  expect(run.stderr).toBe('')
  // Node writes down each of its synchronous calls to the file system: those of the server end in this file.
  const trace = readdirSync(folder)
    .filter((name) => name.startsWith('node_trace'))
    .map((name) => readFileSync(join(folder, name), 'utf8'))
    .join('')
  const begun = [...trace.matchAll(/"ph":"B"[^}]*?"name":"fs\.sync\.fsync"/g)]
  expect(begun.length).toBeGreaterThanOrEqual(10)
})

test('an embedded database with records in it is copied before it is migrated, and the copy opens', async () => {
  const dataDir = newDataDir()
  const it = await opened(dataDir)
  expect(await migrate(it, { now })).toEqual({ ran: [] })
  await it.db.insertInto('base').values({ name: 'Merino' }).execute()

  const later = {
    ...migrations,
    '9999-later': { up: (db: typeof it.db) => sql`create table later (n int)`.execute(db).then(() => {}) },
  }
  const { ran, copy } = await migrate(it, { now, list: later })
  expect(ran).toEqual(['9999-later'])
  expect(copy).toBe(join(dataDir, 'copies', 'before-migration-2026-03-29T10-20-30.tar.gz'))

  const restored = await restoreCopy(copy ?? '', join(temporaryFolder(), 'restored'))
  onTestFinished(() => restored.close())
  expect(await restored.db.selectFrom('base').select('name').execute()).toEqual([{ name: 'Merino' }])
  const { rows } = await sql`select to_regclass('later') as later`.execute(restored.db)
  expect(rows).toEqual([{ later: null }])
})

test('a database of newer code is refused in one sentence, and left as it is', async () => {
  const it = await opened(newDataDir())
  const later = { ...migrations, '9999-later': { up: async () => {} } }
  await migrate(it, { now, list: later })
  await expect(migrate(it, { now })).rejects.toThrow(
    'This database was last opened by a newer version of Runs Clear (it knows 9999-later); start that version or a later one.',
  )
  expect(await migrate(it, { now, list: later })).toEqual({ ran: [] })
})

test('a migration that fails leaves nothing of itself', async () => {
  const it = await opened(newDataDir())
  const broken = {
    ...migrations,
    '9999-broken': {
      async up(db: typeof it.db) {
        await sql`create table half (n int)`.execute(db)
        await sql`create table half (n int)`.execute(db)
      },
    },
  }
  await expect(migrate(it, { now, list: broken })).rejects.toThrow('The migration 9999-broken failed')
  const { rows } = await sql`select to_regclass('half') as half`.execute(it.db)
  expect(rows).toEqual([{ half: null }])
})

test('a copy is restored into a new folder only', async () => {
  const dataDir = newDataDir()
  const it = await opened(dataDir)
  const copy = await copyDatabase(it, 'by-hand', { now })
  await it.close()
  await expect(restoreCopy(copy, dataDir)).rejects.toThrow('a copy is restored into a new folder only')
})
