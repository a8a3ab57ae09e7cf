import type { TableProgress } from '#api/contract/table.ts'

/** How far the tables are that are being kept right now, by the id of their import. Held in memory: it is news, not record. */
const underWay = new Map<string, TableProgress>()

export function say(importId: string, stage: string, done: number, of: number): void {
  underWay.set(importId, { stage, done, of, ended: false })
}

export function end(importId: string): void {
  underWay.delete(importId)
}

export function progressOf(importId: string): TableProgress | undefined {
  return underWay.get(importId)
}
