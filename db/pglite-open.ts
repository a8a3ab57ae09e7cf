import { resolve } from 'node:path'
import type { Kysely } from 'kysely'
import { CannotStart } from './cannot-start.ts'
import { lockDataDir } from './data-dir-lock.ts'
import { makeDataFolder, recordsIn, stateOfDataFolder } from './data-folder.ts'
import { kyselyOver } from './kysely-over.ts'
import { beginDatabase } from './pglite-begin.ts'
import { pglitePool } from './pglite-pool.ts'
import { type PgliteThread, startPgliteThread } from './pglite-thread.ts'
import { startUpkeep, tidyUp } from './pglite-upkeep.ts'
import type { Database } from './tables.ts'

export type OpenedEmbedded = {
  readonly kind: 'embedded'
  readonly db: Kysely<Database>
  readonly dataDir: string
  /** The whole database of this moment, as a gzipped tar. */
  copy(): Promise<Uint8Array>
  close(): Promise<void>
}

/**
 * Opens the embedded database of a data folder, made if it is not there. Nothing touches the files before the lock is
 * held, and what is not ours is refused before the lock, which leaves a file on some systems.
 *
 * @param settings.copy Begins a new database from this copy (database-copy.ts).
 * @param settings.lost Is told if the database ever stops by itself.
 */
export async function openEmbedded(
  dataDir: string,
  { copy, lost = () => {} }: { copy?: Uint8Array; lost?: (error: Error) => void } = {},
): Promise<OpenedEmbedded> {
  makeDataFolder(dataDir)
  look(dataDir, copy)
  const release = await lockDataDir(dataDir)
  let thread: PgliteThread
  try {
    // Looked at again: another process may have been at work before the lock was ours.
    if (look(dataDir, copy) === 'none yet') await begin(dataDir, copy)
    thread = await start(dataDir, lost)
  } catch (error) {
    await release()
    throw error
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

function look(dataDir: string, copy: Uint8Array | undefined): 'none yet' | 'whole' {
  const state = stateOfDataFolder(dataDir, { forCopy: copy !== undefined })
  if (copy && state === 'whole')
    throw new CannotStart(
      `There already is a database in ${dataDir}; a copy is restored into a new folder only.`,
    )
  return state
}

// What the embedded database says of its own failures is of no help to a person: "Aborted()".
async function begin(dataDir: string, copy: Uint8Array | undefined): Promise<void> {
  try {
    await beginDatabase(dataDir, copy)
  } catch (cause) {
    throw new CannotStart(
      `No database could be made in ${resolve(dataDir)}: look whether the disk is full, and start again.`,
      { cause },
    )
  }
}

async function start(dataDir: string, lost: (error: Error) => void): Promise<PgliteThread> {
  try {
    return await startPgliteThread({ folder: recordsIn(dataDir) }, { lost })
  } catch (cause) {
    throw new CannotStart(
      `The database in ${recordsIn(dataDir)} does not open, for some of its files are damaged or cannot be read: put a copy of the folder in its place.`,
      { cause },
    )
  }
}
