import { renameSync, rmSync } from 'node:fs'
import { open, readdir } from 'node:fs/promises'
import { join } from 'node:path'
import { recordsIn, unfinishedCopyIn, unfinishedIn } from './data-folder.ts'
import { startPgliteThread } from './pglite-thread.ts'

/**
 * Makes the database of a data folder that has none, empty or from a copy. It is made under another name, and takes
 * its own when every file of it is on the disk: `records` is whole or not there, however a first start ends.
 */
export async function beginDatabase(dataDir: string, copy?: Uint8Array): Promise<void> {
  const unfinished = copy ? unfinishedCopyIn(dataDir) : unfinishedIn(dataDir)
  for (const left of [unfinishedIn(dataDir), unfinished]) rmSync(left, { recursive: true, force: true })
  const thread = await startPgliteThread(
    { folder: unfinished, ...(copy ? { copy } : {}) },
    { lost: () => {} },
  )
  await thread.close()
  await bringToDisk(unfinished)
  renameSync(unfinished, recordsIn(dataDir))
  await sync(dataDir)
}

async function bringToDisk(folder: string): Promise<void> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true })
  const files = entries.filter((it) => it.isFile()).map((it) => join(it.parentPath, it.name))
  const folders = entries.filter((it) => it.isDirectory()).map((it) => join(it.parentPath, it.name))
  // A few at a time: a thousand open files are more than some systems allow.
  for (let from = 0; from < files.length; from += 16)
    await Promise.all(files.slice(from, from + 16).map((file) => sync(file, 'r+')))
  for (const it of [...folders, folder]) await sync(it)
}

async function sync(path: string, flags = 'r'): Promise<void> {
  // Windows writes the names in a folder down by itself, and opens no folder.
  if (process.platform === 'win32' && flags === 'r') return
  const handle = await open(path, flags)
  try {
    await handle.sync()
  } finally {
    await handle.close()
  }
}
