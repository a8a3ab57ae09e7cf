import { createHash } from 'node:crypto'
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { migrate } from '#db/migrate.ts'
import { openEmbedded } from '#db/pglite-open.ts'
import { keptBetweenRuns } from './kept-between-runs.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))

export type MigratedDatabase = {
  /** A data folder, to be copied. */
  readonly dataDir: string
  /** The same as one file, which PGlite reads into memory. */
  readonly copy: string
}

/**
 * A migrated, empty embedded database. Four seconds go into a new one, so it is made once and kept from run to run,
 * under a name that changes with whatever makes it: the code of `db/` and the versions of the packages.
 */
export async function migratedDatabase(): Promise<MigratedDatabase> {
  const folder = join(keptBetweenRuns, `database-${fingerprint()}`)
  if (!existsSync(folder)) await make(folder)
  return { dataDir: join(folder, 'data'), copy: join(folder, 'empty.tar.gz') }
}

function fingerprint(): string {
  const hash = createHash('sha256').update(process.version)
  const sources = readdirSync(join(root, 'db'), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.m?ts$/.test(name) && !name.startsWith('sample-trials'))
    .sort()
    .map((name) => join('db', name))
  for (const name of [...sources, 'package-lock.json'])
    hash.update(name).update(readFileSync(join(root, name)))
  return hash.digest('hex').slice(0, 16)
}

async function make(folder: string): Promise<void> {
  mkdirSync(keptBetweenRuns, { recursive: true })
  // Whole or not there: two runs may begin at once, and one may be broken off.
  const half = mkdtempSync(join(keptBetweenRuns, 'half-made-'))
  const opened = await openEmbedded(join(half, 'data'))
  await migrate(opened, { now: new Date() })
  writeFileSync(join(half, 'empty.tar.gz'), await opened.copy())
  await opened.close()
  try {
    renameSync(half, folder)
  } catch (error) {
    if (!existsSync(folder)) throw error
    rmSync(half, { recursive: true })
  }
  forgetOthers(folder)
}

/** What was made from other code is of no use any longer; an hour on, no run can be reading it either. */
function forgetOthers(folder: string): void {
  const hourAgo = Date.now() - 3_600_000
  for (const name of readdirSync(keptBetweenRuns)) {
    const other = join(keptBetweenRuns, name)
    if (!/^(database|half-made)-/.test(name) || other === folder) continue
    if (statSync(other).mtimeMs < hourAgo) rmSync(other, { recursive: true, force: true })
  }
}
