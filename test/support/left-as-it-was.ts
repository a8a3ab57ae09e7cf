import { createHash } from 'node:crypto'
import { lstatSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** Everything at a path: names, kinds, modes, times of change, and what the files hold. Two that are equal were not touched. */
export function printOf(path: string): string[] {
  const it = lstatSync(path)
  const kind = it.isDirectory() ? 'folder' : 'file'
  const holds = it.isFile() ? createHash('sha256').update(readFileSync(path)).digest('hex') : ''
  const own = [path, kind, it.mode.toString(8), it.mtimeMs, it.ctimeMs, holds].join(' ')
  if (!it.isDirectory()) return [own]
  return [
    own,
    ...readdirSync(path)
      .sort()
      .flatMap((name) => printOf(join(path, name))),
  ]
}
