import { execFileSync } from 'node:child_process'
import { linkSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { inUse, type Release } from './data-dir-lock.ts'

/**
 * The lock where there is no kernel lock to be had: files `.lock-1`, `.lock-2`, … in the folder, of which the
 * highest counts. It names its process and when that process began, so that a number that came back is not
 * taken for the holder. A dead holder is followed by whoever makes the next number first (a link is made once
 * or not at all); the highest file is never removed, or a slow starter could make a lower one beside it.
 */
export async function lockByFile(dataDir: string): Promise<Release> {
  const last = Math.max(0, ...numbersIn(dataDir))
  const holder = last > 0 ? readOwner(join(dataDir, `.lock-${last}`)) : undefined
  if (holder && startOf(holder.pid) === holder.since) throw inUse(dataDir, holder.pid)

  const mine = join(dataDir, `.lock-${last + 1}`)
  const draft = join(dataDir, `.lock-draft-${process.pid}-${Date.now()}`)
  writeFileSync(draft, JSON.stringify({ pid: String(process.pid), since: startOf(String(process.pid)) }))
  try {
    linkSync(draft, mine)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') throw inUse(dataDir, readOwner(mine)?.pid)
    throw error
  } finally {
    rmSync(draft, { force: true })
  }
  for (const number of numbersIn(dataDir))
    if (number <= last) rmSync(join(dataDir, `.lock-${number}`), { force: true })
  return async () => writeFileSync(mine, '{}')
}

function numbersIn(dataDir: string): number[] {
  return readdirSync(dataDir)
    .flatMap((name) => /^\.lock-(\d+)$/.exec(name)?.[1] ?? [])
    .map(Number)
}

function readOwner(file: string): { pid: string; since: string } | undefined {
  try {
    const { pid, since } = JSON.parse(readFileSync(file, 'utf8')) as { pid?: string; since?: string }
    return pid && since ? { pid, since } : undefined
  } catch {
    return undefined
  }
}

/** When a running process began, in the system's own words; undefined when there is none of that number. */
function startOf(pid: string): string | undefined {
  try {
    if (process.platform === 'linux')
      return readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ').at(-1)?.split(' ')[19]
    return execFileSync('ps', ['-o', 'lstart=', '-p', pid], { encoding: 'utf8' }).trim() || undefined
  } catch {
    return undefined
  }
}
