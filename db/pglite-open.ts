import { existsSync, mkdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import type { Kysely } from 'kysely'
import { CannotStart } from './cannot-start.ts'
import { lockDataDir } from './data-dir-lock.ts'
import { kyselyOver } from './kysely-over.ts'
import { pglitePool } from './pglite-pool.ts'
import { type PgliteThread, startPgliteThread } from './pglite-thread.ts'
import { startUpkeep, tidyUp } from './pglite-upkeep.ts'
import type { Database } from './tables.ts'

/** The major version of PostgreSQL that the pinned PGlite is. */
const major = '18'

export type OpenedEmbedded = {
  readonly kind: 'embedded'
  readonly db: Kysely<Database>
  readonly dataDir: string
  /** The whole database of this moment, as a gzipped tar. */
  copy(): Promise<Uint8Array>
  close(): Promise<void>
}

/**
 * Opens the embedded database of a data folder, made if it is not there. The lock comes first: nothing touches
 * the files before it is held.
 *
 * @param settings.copy Begins a new database from this copy (database-copy.ts).
 * @param settings.lost Is told if the database ever stops by itself.
 */
export async function openEmbedded(
  dataDir: string,
  { copy, lost = () => {} }: { copy?: Uint8Array; lost?: (error: Error) => void } = {},
): Promise<OpenedEmbedded> {
  const folder = join(dataDir, 'records')
  makeFolder(dataDir)
  const release = await lockDataDir(dataDir)
  let thread: PgliteThread
  try {
    refuseOtherMajor(folder)
    if (copy && existsSync(folder))
      throw new CannotStart(
        `There already is a database in ${dataDir}; a copy is restored into a new folder only.`,
      )
    thread = await startPgliteThread({ folder, ...(copy ? { copy } : {}) }, { lost })
  } catch (error) {
    await release()
    if (error instanceof CannotStart) throw error
    throw new CannotStart(`The database in ${dataDir} does not open: ${(error as Error).message}.`, {
      cause: error,
    })
  }
  const db = kyselyOver(pglitePool(thread.database, { waitMs: 30_000 }))
  const upkeep = startUpkeep(db)
  return {
    kind: 'embedded',
    db,
    dataDir,
    async copy() {
      // A checkpoint first: without the log of what the tables hold anyway, the copy is half as large.
      await tidyUp(db)
      return thread.copy()
    },
    async close() {
      await upkeep.stop()
      await db.destroy()
      await thread.close()
      await release()
    },
  }
}

function makeFolder(dataDir: string): void {
  try {
    mkdirSync(dataDir, { recursive: true })
  } catch (error) {
    throw new CannotStart(`The data folder ${resolve(dataDir)} cannot be made: ${(error as Error).message}.`)
  }
}

// PGlite itself would only say that it "failed to initialize properly". The file is written last by a first opening.
function refuseOtherMajor(folder: string): void {
  const file = join(folder, 'PG_VERSION')
  if (!existsSync(file)) return
  const found = readFileSync(file, 'utf8').trim()
  if (found === major) return
  throw new CannotStart(
    `The database in ${folder} was written by PostgreSQL ${found}, and this version of Runs Clear reads ${major}: open it with the version that wrote it and export the records there.`,
  )
}
