import { accessSync, constants, mkdirSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { CannotStart } from './cannot-start.ts'
import { controlFile, faultOfControlFile } from './control-file.ts'
import { whyNot } from './why-not.ts'

/** The major version of PostgreSQL that the pinned PGlite is. */
const major = '18'

/** The database, once it is whole: it takes this name only then, so an unfinished one never has it. */
export const recordsIn = (dataDir: string): string => join(dataDir, 'records')
/** Where a first start makes the database. Nobody has ever written into one of this name: it may be made anew. */
export const unfinishedIn = (dataDir: string): string => join(dataDir, 'unfinished-first-start')
/** Where a copy is unpacked. Not begun anew without being asked: the records of the copy are wanted. */
export const unfinishedCopyIn = (dataDir: string): string => join(dataDir, 'unfinished-copy')

const isLock = (name: string): boolean => name.startsWith('.lock-')

/** Makes the folder if nothing is there. */
export function makeDataFolder(dataDir: string): void {
  try {
    mkdirSync(dataDir, { recursive: true })
  } catch (error) {
    if (isFile(dataDir))
      throw new CannotStart(`${dataDir} is a file, not a folder: name a folder with DATA_DIR.`)
    throw new CannotStart(`The data folder ${dataDir} cannot be made: ${whyNot(error)}.`, { cause: error })
  }
}

/**
 * Does a data folder hold a whole database, or none yet? Only looks: what is refused is left as it was.
 *
 * @param options.forCopy A copy is to be restored: other copies may lie there.
 * @throws CannotStart in one sentence for a folder that is neither ours and whole, nor empty, nor an unfinished first start.
 */
export function stateOfDataFolder(
  dataDir: string,
  { forCopy = false }: { forCopy?: boolean } = {},
): 'none yet' | 'whole' {
  try {
    refuseReadOnly(dataDir)
    const names = readdirSync(dataDir)
    if (names.includes('records')) {
      refuseBroken(recordsIn(dataDir))
      return 'whole'
    }
    const allowed = ['unfinished-first-start', ...(forCopy ? ['copies', 'unfinished-copy'] : [])]
    const strange = names.find(
      (name) =>
        !allowed.includes(name) && !isLock(name) && !(name === 'demo' && isDataFolder(join(dataDir, name))),
    )
    if (strange === undefined) return 'none yet'
    throw new CannotStart(
      `The folder ${dataDir} holds something (“${strange}”) but no records of Runs Clear, so it was left as it is: choose an empty folder or a new one with DATA_DIR, or put the missing folder “records” back.`,
    )
  } catch (error) {
    if (error instanceof CannotStart) throw error
    throw new CannotStart(`The data folder ${dataDir} cannot be read: ${whyNot(error)}.`, { cause: error })
  }
}

function refuseBroken(records: string): void {
  const fault = faultIn(records)
  if (fault)
    throw new CannotStart(
      `The database in ${records} is not whole (${fault}), so it was left as it is: put the missing files or a copy of the folder back, or choose another folder with DATA_DIR.`,
    )
  refuseReadOnly(records)
  refuseReadOnly(join(records, controlFile))
}

function faultIn(records: string): string | undefined {
  if (!statSync(records).isDirectory()) return 'it is a file, not a folder'
  const names = readdirSync(records)
  if (names.length === 0) return 'it is empty'
  if (!names.includes('PG_VERSION')) return 'PG_VERSION is missing'
  const version = readFileSync(join(records, 'PG_VERSION'), 'utf8').trim()
  if (!/^\d+(\.\d+)?$/.test(version)) return 'PG_VERSION is damaged'
  if (version !== major)
    throw new CannotStart(
      `The database in ${records} was written by PostgreSQL ${version}, and this version of Runs Clear reads ${major}: open it with the version that wrote it and export the records there.`,
    )
  const missing = ['base', 'global', 'pg_wal', 'pg_xact'].find((name) => !names.includes(name))
  if (missing) return `${missing} is missing`
  if (!isFile(join(records, controlFile))) return `${controlFile} is missing`
  return faultOfControlFile(readFileSync(join(records, controlFile)))
}

/** Also where the system would let us, as it lets root: who took away every right to write meant it. */
function refuseReadOnly(path: string): void {
  try {
    accessSync(path, constants.R_OK | constants.W_OK)
    if ((statSync(path).mode & 0o222) !== 0) return
  } catch (error) {
    throw new CannotStart(`${path} cannot be written to: ${whyNot(error)}; choose another with DATA_DIR.`)
  }
  throw new CannotStart(
    `${path} cannot be written to: it is marked read-only; allow writing, or choose another folder with DATA_DIR.`,
  )
}

function isFile(path: string): boolean {
  try {
    return !statSync(path).isDirectory()
  } catch {
    return false
  }
}

/** Nothing but what a data folder has: the demonstration keeps its own within the usual one. */
function isDataFolder(path: string): boolean {
  const own = ['records', 'copies', 'unfinished-first-start']
  return !isFile(path) && readdirSync(path).every((name) => own.includes(name) || isLock(name))
}
