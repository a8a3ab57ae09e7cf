import {
  chmodSync,
  cpSync,
  mkdirSync,
  readdirSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { openEmbedded } from '#db/pglite-open.ts'
import { printOf } from '#test/support/left-as-it-was.ts'
import { endOfStart, startServer } from '#test/support/running-server.ts'
import { newDataDir, temporaryFolder } from '#test/support/temporary-folder.ts'

type Folder = {
  readonly dataDir: string
  readonly says: string
  readonly user?: { uid: number; gid: number }
}

/** A data folder of ours with something done to its database. */
function harmed(harm: (records: string) => void, says: string): Folder {
  const dataDir = newDataDir()
  harm(join(dataDir, 'records'))
  return { dataDir, says }
}

function withFile(name: string): string {
  const folder = temporaryFolder()
  writeFileSync(join(folder, name), 'Dear customer')
  return folder
}

const folders: Readonly<Record<string, () => Folder>> = {
  'a database without its PG_VERSION': () =>
    harmed((records) => rmSync(join(records, 'PG_VERSION')), '(PG_VERSION is missing)'),
  'an empty PG_VERSION': () =>
    harmed((records) => truncateSync(join(records, 'PG_VERSION')), '(PG_VERSION is damaged)'),
  'a database of another version': () =>
    harmed((records) => writeFileSync(join(records, 'PG_VERSION'), '17\n'), 'was written by PostgreSQL 17'),
  'an empty control file': () =>
    harmed((records) => truncateSync(join(records, 'global/pg_control')), '(global/pg_control is empty)'),
  'a control file that is cut short': () =>
    harmed(
      (records) => truncateSync(join(records, 'global/pg_control'), 4096),
      '(global/pg_control is cut short',
    ),
  'a control file of nothing but zeros': () =>
    harmed(
      (records) => writeFileSync(join(records, 'global/pg_control'), Buffer.alloc(8192)),
      '(global/pg_control is damaged)',
    ),
  'a database without its control file': () =>
    harmed((records) => rmSync(join(records, 'global/pg_control')), '(global/pg_control is missing)'),
  'a database without its tables': () =>
    harmed((records) => rmSync(join(records, 'base'), { recursive: true }), '(base is missing)'),
  'an empty folder in place of the database': () =>
    harmed((records) => {
      rmSync(records, { recursive: true })
      mkdirSync(records)
    }, '(it is empty)'),
  'a file in place of the database': () =>
    harmed((records) => {
      rmSync(records, { recursive: true })
      writeFileSync(records, '')
    }, '(it is a file, not a folder)'),
  'copies without the database': () => {
    const dataDir = temporaryFolder()
    mkdirSync(join(dataDir, 'copies'))
    return { dataDir, says: 'holds something (“copies”)' }
  },
  'a folder of somebody’s letters': () => ({
    dataDir: withFile('letter.txt'),
    says: 'holds something (“letter.txt”)',
  }),
  'a folder of letters named as our demonstration is': () => {
    const dataDir = temporaryFolder()
    mkdirSync(join(dataDir, 'demo'))
    writeFileSync(join(dataDir, 'demo', 'letter.txt'), '')
    return { dataDir, says: 'holds something (“demo”)' }
  },
  'the folder of another PostgreSQL database': () => ({
    dataDir: withFile('PG_VERSION'),
    says: 'holds something (“PG_VERSION”)',
  }),
  'a file': () => ({ dataDir: join(withFile('letter.txt'), 'letter.txt'), says: 'is a file, not a folder' }),
  'an empty folder that is marked read-only': () => {
    const dataDir = temporaryFolder()
    chmodSync(dataDir, 0o555)
    return { dataDir, says: 'cannot be written to' }
  },
  'a data folder that is marked read-only': () => {
    const dataDir = newDataDir()
    chmodSync(dataDir, 0o555)
    return { dataDir, says: 'cannot be written to' }
  },
  'a folder that another user owns': () => {
    const dataDir = join(temporaryFolder(), 'data')
    mkdirSync(dataDir)
    chmodSync(join(dataDir, '..'), 0o755)
    chmodSync(dataDir, 0o755)
    // Root may write everywhere, and so becomes somebody who may not; anybody else is in /proc already.
    const isRoot = process.getuid?.() === 0
    return isRoot
      ? { dataDir, user: { uid: 65_534, gid: 65_534 }, says: 'this user may not' }
      : { dataDir: '/proc', says: 'cannot be' }
  },
}

test.each(Object.entries(folders))('%s is refused in one sentence and left as it is', async (_, make) => {
  const { dataDir, says, user } = make()
  const untouchable = dataDir === '/proc'
  const before = untouchable ? [] : printOf(dataDir)
  const end = await endOfStart({ dataDir }, user ? { user } : {})
  expect(end).toMatchObject({ code: 1, signal: null })
  expect(end.stderr).toContain(says)
  expect(end.stderr).toMatch(/^[^\n]+\.\n$/)
  expect(end.stderr).not.toMatch(/Aborted|\bE[A-Z]{4,}\b|Error| at /)
  expect(untouchable ? [] : printOf(dataDir)).toEqual(before)
})

test('a folder below a file is refused in one sentence', async () => {
  const end = await endOfStart({ dataDir: join(withFile('letter.txt'), 'letter.txt', 'data') })
  expect(end.code).toBe(1)
  expect(end.stderr).toMatch(
    /^The data folder .* cannot be made: a part of its path is a file, not a folder\.\n$/,
  )
})

test('a database whose log is damaged is refused in one sentence', async () => {
  const { dataDir } = harmed((records) => {
    for (const name of readdirSync(join(records, 'pg_wal')))
      if (/^[0-9A-F]{24}$/.test(name)) truncateSync(join(records, 'pg_wal', name))
  }, '')
  const end = await endOfStart({ dataDir })
  expect(end.code).toBe(1)
  expect(end.stderr).toMatch(
    /^The database in .* does not open, for some of its files are damaged [^\n]*\.\n$/,
  )
})

test('a first start that is killed half way is begun anew, and what it left is gone', async () => {
  const dataDir = join(temporaryFolder(), 'data')
  const isNew = (path: string, since: number) =>
    (statSync(path, { throwIfNoEntry: false })?.ctimeMs ?? 0) > since
  for (const reached of ['base/1', 'global/pg_control']) {
    const begun = Date.now()
    const killedWhen = () => isNew(join(dataDir, 'unfinished-first-start', reached), begun)
    expect((await endOfStart({ dataDir }, { killedWhen })).signal).toBe('SIGKILL')
    expect(readdirSync(dataDir)).toEqual(['unfinished-first-start'])
  }
  const server = await startServer({ dataDir })
  onTestFinished(async () => {
    await server.kill()
  })
  expect((await fetch(`${server.url}/api/health`)).status).toBe(200)
  expect(readdirSync(dataDir)).toEqual(['records'])
}, 300_000)

test('the usual folder starts beside the demonstration that lies in it', async () => {
  const dataDir = temporaryFolder()
  cpSync(newDataDir(), join(dataDir, 'demo'), { recursive: true })
  const opened = await openEmbedded(dataDir)
  await opened.close()
  expect(readdirSync(dataDir).sort()).toEqual(['demo', 'records'])
})
