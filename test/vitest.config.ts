import { availableParallelism } from 'node:os'
import { defineConfig, type TestProjectInlineConfiguration } from 'vitest/config'

/**
 * Five projects, told apart by what a test needs; `npm test -- <path>` runs the files whose path has it, and prepares
 * no more than their projects ask for.
 *
 * - `science`: nothing but the code.
 * - `embedded`: the embedded database, in memory, emptied for each test.
 * - `server`: a PostgreSQL. The same files a second time, but for those in `sameOnServer`, and what only a server can
 *   show: `*.server.test.ts`.
 * - `process`: the built tool as a process, and data folders on the disk: `*.process.test.ts`.
 * - `browser`: a Chromium before the built pages: `*.browser.test.ts`.
 */
const root = new URL('..', import.meta.url).pathname

const science = [
  'test/science/**/*.test.ts',
  'test/judging/**/*.test.ts',
  'test/api/calculations/**/*.test.ts',
  'test/api/config.test.ts',
  'test/api/contract/**/*.test.ts',
  'test/api/http/**/*.test.ts',
  'test/api/sign-in/**/*.test.ts',
  'test/api/table/**/*.test.ts',
  'test/project/**/*.test.ts',
  'test/web/**/*.test.ts',
]
const onServer = ['test/**/*.server.test.ts']
const processes = ['test/**/*.process.test.ts']
const browsers = ['test/**/*.browser.test.ts']
const data = ['test/db/**/*.test.ts', 'test/api/**/*.test.ts']

/**
 * Files that need no second run on a server: they ask about words and numbers that follow from the rows, and every
 * statement that they send is sent there by another file too.
 */
const sameOnServer = [
  // Verdicts, steps and cautions of trials; example-studio.test.ts and imports/ keep and read such trials there.
  'test/api/findings/**/*.test.ts',
  // What is said of a wrong table; imports/tables.test.ts refuses one there.
  'test/api/wrong-tables.test.ts',
]

type Settings = NonNullable<TestProjectInlineConfiguration['test']>

function project(name: string, test: Settings): TestProjectInlineConfiguration {
  return {
    root,
    test: {
      root,
      name,
      environment: 'node',
      testTimeout: 60_000,
      hookTimeout: 60_000,
      ...test,
      setupFiles: ['test/support/seeded-properties.ts', ...[test.setupFiles ?? []].flat()],
    },
  }
}

// One thread for many files, which share what they import: loading it costs more than the tests of most files. So a
// test must leave nothing behind that another could see.
const inThreads: Pick<Settings, 'pool' | 'isolate'> = { pool: 'threads', isolate: false }

// With a database in each thread, kept from file to file.
const onDatabase: Pick<Settings, 'pool' | 'isolate' | 'setupFiles'> = {
  ...inThreads,
  setupFiles: ['test/support/skip-if-missing.ts'],
}

/** What is made once before the first file of a project begins, and only if one of its files runs. */
const prepared = (...what: string[]): string[] => what.map((it) => `test/support/${it}-once.ts`)

export default defineConfig({
  root,
  test: {
    // One core is left free otherwise: on a machine of two, half of it would wait.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    projects: [
      project('science', { ...inThreads, include: science, exclude: [...browsers, ...processes] }),
      project('embedded', {
        ...onDatabase,
        include: data,
        exclude: [...science, ...browsers, ...processes, ...onServer],
        globalSetup: prepared('migrated'),
      }),
      project('server', {
        ...onDatabase,
        include: data,
        exclude: [...science, ...browsers, ...processes, ...sameOnServer],
        globalSetup: prepared('server'),
      }),
      project('process', {
        include: processes,
        testTimeout: 120_000,
        hookTimeout: 120_000,
        globalSetup: prepared('built', 'migrated'),
      }),
      project('browser', {
        ...onDatabase,
        include: browsers,
        testTimeout: 120_000,
        hookTimeout: 120_000,
        globalSetup: prepared('built', 'migrated', 'browser'),
      }),
    ],
  },
})
