import type { TableProgress } from '#api/contract/table.ts'

/** How far the tables are that are being kept right now, by the id of their import. Held in memory: it is news, not record. */
const underWay = new Map<string, TableProgress>()

export function say(importId: string, stage: string, done: number, of: number): void {
  underWay.set(importId, { stage, done, of, ended: false })
}

/** What has ended is told for a minute more, to whoever asks just then. */
export function end(importId: string): void {
  const before = underWay.get(importId)
  if (!before) return
  underWay.set(importId, { ...before, ended: true })
  setTimeout(() => {
    if (underWay.get(importId)?.ended) underWay.delete(importId)
  }, 60_000).unref()
}

export function progressOf(importId: string): TableProgress | undefined {
  return underWay.get(importId)
}
