import type { Column, Columns } from '#api/contract/columns.ts'
import type { z } from '#api/contract/schema.ts'
import { correctedOf, storedOf } from './moments.ts'

type Kept<C extends Column> = C['kept'] extends 'moment'
  ? Date | Extract<z.output<C['shown']>, null>
  : z.output<C['shown']>
type Stored = { readonly id: string; readonly version: number; readonly createdAt: Date }
type Corrected = Parameters<typeof correctedOf>[0]

/** A row that holds every column of a noun. */
export type RowWith<C extends Columns> = Stored & { readonly [Key in keyof C]: Kept<C[Key]> }

/** A plain record as it leaves: what every record says of itself, then its columns as they are declared. */
export function presentPlain<C extends Columns, Shown extends z.ZodType>({
  columns,
}: {
  readonly columns: C
  readonly shown: Shown
}) {
  return (row: RowWith<C>) => ({ ...storedOf(row), ...columnsOf(columns, row) }) as z.output<Shown>
}

/** A measured record as it leaves, with what it says of its corrections. */
export function presentMeasured<C extends Columns, Shown extends z.ZodType>({
  columns,
}: {
  readonly columns: C
  readonly shown: Shown
}) {
  return (row: RowWith<C> & Corrected) =>
    ({ ...storedOf(row), ...columnsOf(columns, row), ...correctedOf(row) }) as z.output<Shown>
}

function columnsOf<C extends Columns>(columns: C, row: RowWith<C>): Record<string, unknown> {
  const shown: Record<string, unknown> = {}
  for (const key of Object.keys(columns)) {
    const value: unknown = row[key]
    shown[key] = value instanceof Date ? value.toISOString() : value
  }
  return shown
}
