import { defineConfig } from 'vitest/config'

/**
 * Four projects, so that each can be run alone: `npx vitest run --config test/vitest.config.ts --project science`.
 * Science needs no database and no browser; data runs twice, on the embedded database and on a server.
 */
const root = new URL('..', import.meta.url).pathname
const common = { root, environment: 'node' as const }

export default defineConfig({
  root,
  test: {
    projects: [
      {
        root,
        test: {
          ...common,
          name: 'science',
          include: [
            'test/science/**/*.test.ts',
            'test/api/calculations/**/*.test.ts',
            'test/api/contract/**/*.test.ts',
            'test/project/**/*.test.ts',
            'test/web/**/*.test.ts',
          ],
          exclude: ['**/*.browser.test.ts'],
          testTimeout: 30_000,
        },
      },
    ],
  },
})
