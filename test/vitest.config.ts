import { defineConfig, type TestProjectInlineConfiguration } from 'vitest/config'

/**
 * Five projects, so that each can be run alone: `npx vitest run --config test/vitest.config.ts --project science`.
 * Science needs no database and no browser; data runs twice, on the embedded database and on a server (and what
 * only a server can show, `*.server.test.ts`, once); `process` starts processes and opens folders of its own; `browser` drives a Chromium against the built tool.
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
  'test/judging/**/*.test.ts',
  'test/project/**/*.test.ts',
  'test/web/**/*.test.ts',
]
const onServer = ['test/**/*.server.test.ts']
const processes = ['test/**/*.process.test.ts']
const browsers = ['test/**/*.browser.test.ts']
const data = ['test/db/**/*.test.ts', 'test/api/**/*.test.ts']

type Settings = NonNullable<TestProjectInlineConfiguration['test']>

function project(name: string, test: Settings): TestProjectInlineConfiguration {
  return {
    root,
    test: {
      root,
      name,
      environment: 'node',
      testTimeout: 30_000,
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

export default defineConfig({
  root,
  test: {
    projects: [
      project('science', { ...inThreads, include: science, exclude: [...browsers, ...processes] }),
      project('embedded', {
        ...onDatabase,
        include: data,
        exclude: [...science, ...browsers, ...processes, ...onServer],
        globalSetup: 'test/support/embedded-once.ts',
      }),
      project('server', {
        ...onDatabase,
        include: data,
        exclude: [...science, ...browsers, ...processes],
        globalSetup: 'test/support/server-once.ts',
      }),
      project('process', {
        include: processes,
        testTimeout: 120_000,
        hookTimeout: 120_000,
        globalSetup: ['test/support/built-once.ts', 'test/support/data-dir-once.ts'],
      }),
      project('browser', {
        include: browsers,
        testTimeout: 120_000,
        hookTimeout: 120_000,
        setupFiles: ['test/support/skip-if-missing.ts'],
        globalSetup: ['built', 'data-dir', 'browser'].map((it) => `test/support/${it}-once.ts`),
      }),
    ],
  },
})
