import type { Wear } from '#db/tables.ts'

/** What one skein gave for one kind of result: the part of a result row that does not come from its history. */
export type SkeinResult = {
  readonly kind: string
  readonly fibre: string
  readonly basis: string
  readonly wear: Wear
  readonly value: number
  readonly text: string | null
  readonly dL: number | null
  readonly dA: number | null
  readonly dB: number | null
  readonly readingsN: number
  readonly spotsN: number
  readonly settings: string
  readonly firstRecordedAt: Date
}

type Recorded = { readonly takenAt: Date | null; readonly createdAt: Date }

/** The earliest moment at which any of these was known, by the person's clock or by the server's. */
export function firstRecorded(rows: readonly Recorded[]): Date {
  let first = Infinity
  for (const { takenAt, createdAt } of rows)
    first = Math.min(first, createdAt.getTime(), takenAt?.getTime() ?? Infinity)
  return new Date(first)
}
