import type { TestProject } from 'vitest/node'
import './provided.ts'

/**
 * What this machine lacks and cannot get: the tests of the project are skipped and counted as skipped, and the last
 * line of the run says why. Where the run decides something (CI), it is a failure instead.
 */
export function missingHere(project: TestProject, why: string): () => Promise<void> {
  if (process.env.CI) throw new Error(why)
  project.provide('missing', why)
  return async () => {
    process.stderr.write(`\n!!! SKIPPED: the tests of the project “${project.name}”. ${why}\n`)
  }
}
