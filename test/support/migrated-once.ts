import type { TestProject } from 'vitest/node'
import { migratedDatabase } from './migrated-database.ts'
import './provided.ts'

/** Hands out a migrated, empty embedded database: as a folder to be copied, and as a file to be read into memory. */
export default async function migratedOnce(project: TestProject): Promise<void> {
  const { dataDir, copy } = await migratedDatabase()
  project.provide('dataDir', dataDir)
  project.provide('database', { kind: 'embedded', copy })
  project.provide('missing', null)
}
