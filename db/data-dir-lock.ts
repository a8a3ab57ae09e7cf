import { statSync } from 'node:fs'
import { connect, createServer } from 'node:net'
import { CannotStart } from './cannot-start.ts'
import { lockByFile } from './lock-file.ts'

export type Release = () => Promise<void>

/**
 * One process for each data folder: PGlite has no lock of its own, and two openers corrupt it without a word.
 *
 * On Linux the lock is an abstract socket and on Windows a named pipe: held by the kernel, gone with the process
 * however it ends, nothing to clean up. Elsewhere it is a file (`lock-file.ts`). The folder is known by device and
 * inode, so another path to the same folder finds the same lock. Two containers with one volume but separate
 * networks do not see each other's: give such a pair a server (DATABASE_URL).
 *
 * @throws CannotStart in one sentence when another process has the folder.
 */
export async function lockDataDir(dataDir: string): Promise<Release> {
  const { dev, ino } = statSync(dataDir, { bigint: true })
  const name = `runs-clear-${dev}-${ino}`
  if (process.platform === 'linux') return lockBySocket(`\0${name}`, dataDir)
  if (process.platform === 'win32') return lockBySocket(`\\\\.\\pipe\\${name}`, dataDir)
  return lockByFile(dataDir)
}

/** The sentence of the second process. */
export function inUse(dataDir: string, holder: string | undefined): CannotStart {
  const who = holder ? `process ${holder}` : 'another process'
  return new CannotStart(
    `The data folder ${dataDir} is in use by ${who}; end that one first, or choose another folder with DATA_DIR.`,
  )
}

async function lockBySocket(address: string, dataDir: string): Promise<Release> {
  // Whoever connects is told the holder's number, for the sentence above.
  const lock = createServer((socket) => {
    socket.on('error', () => {})
    socket.end(String(process.pid))
  })
  const taken = await new Promise<boolean>((resolve, reject) => {
    lock.once('error', (error: NodeJS.ErrnoException) =>
      error.code === 'EADDRINUSE' || error.code === 'EACCES' ? resolve(true) : reject(error),
    )
    lock.listen(address, () => resolve(false))
  })
  if (taken) throw inUse(dataDir, await askHolder(address))
  lock.unref()
  return () => new Promise((resolve) => lock.close(() => resolve()))
}

function askHolder(address: string): Promise<string | undefined> {
  return new Promise((resolve) => {
    let heard = ''
    const socket = connect(address)
    const end = (): void => {
      socket.destroy()
      resolve(/^\d+$/.test(heard) ? heard : undefined)
    }
    // A holder that is busy, or gone meanwhile, does not keep the sentence waiting.
    socket.setTimeout(1000, end)
    socket.on('data', (bytes) => {
      heard += bytes.toString()
    })
    socket.on('error', end)
    socket.on('end', end)
  })
}
