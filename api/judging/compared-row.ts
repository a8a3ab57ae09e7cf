import type { JudgedRow } from './judged-rows.ts'

/** One result as levels are compared by it. */
export type ComparedRow = {
  readonly level: string
  /** Session, card or parent. */
  readonly block: string
  /** What was given its level independently; rows of one unit are one. */
  readonly unit: string
  readonly vessel: string
  readonly value: number
}

/** The rows that have a result: one that was lost after its reading keeps it. */
export function comparedRows(rows: readonly JudgedRow[]): ComparedRow[] {
  return rows.flatMap(({ levelId, block, unit, vessel, value }) =>
    value === undefined ? [] : [{ level: levelId, block, unit, vessel, value }],
  )
}

/**
 * Skeins that should have a result and have none: not lost, and done or in a block of which something was read. What is
 * only planned is not blank.
 */
export function blankRows(rows: readonly JudgedRow[]): JudgedRow[] {
  const read = new Set(rows.filter((it) => it.value !== undefined).map((it) => it.block))
  return rows.filter(
    (it) =>
      it.value === undefined && it.lost === undefined && (it.skein.status === 'done' || read.has(it.block)),
  )
}
