import { fileURLToPath } from 'node:url'

/** Where tests keep what is dear to make and the same in every run: the built tool, a migrated database. */
export const keptBetweenRuns = fileURLToPath(new URL('../../node_modules/.cache/runs-clear', import.meta.url))
