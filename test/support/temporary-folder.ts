import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { inject, onTestFinished } from 'vitest'
import './provided.ts'

/** A folder of this test's own, gone after it. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'runs-clear-test-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

/** A data folder with a migrated, empty database in it. Needs `migrated-once.ts`. */
export function newDataDir(): string {
  const folder = temporaryFolder()
  cpSync(inject('dataDir'), folder, { recursive: true })
  return folder
}
