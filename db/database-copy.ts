import { closeSync, fsyncSync, mkdirSync, openSync, readFileSync, renameSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import { type OpenedEmbedded, openEmbedded } from './pglite-open.ts'

/**
 * Writes the embedded database, as it is at this moment, to `copies/<why>-<date>.tar.gz` in its data folder.
 * On the disk before it has its name: a copy that is there is whole.
 *
 * @returns The file's path.
 */
export async function copyDatabase(
  opened: OpenedEmbedded,
  why: string,
  { now }: { now: Date },
): Promise<string> {
  const folder = join(opened.dataDir, 'copies')
  mkdirSync(folder, { recursive: true })
  const file = join(folder, `${why}-${now.toISOString().slice(0, 19).replaceAll(':', '-')}.tar.gz`)
  const bytes = await opened.copy()
  const handle = openSync(`${file}.part`, 'w')
  try {
    for (let written = 0; written < bytes.length; ) written += writeSync(handle, bytes, written)
    fsyncSync(handle)
  } finally {
    closeSync(handle)
  }
  renameSync(`${file}.part`, file)
  return file
}

/** Opens a new data folder that begins with what a copy holds. */
export function restoreCopy(file: string, dataDir: string): Promise<OpenedEmbedded> {
  return openEmbedded(dataDir, { copy: readFileSync(file) })
}
