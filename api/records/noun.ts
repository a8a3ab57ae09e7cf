import type { Kysely, Selectable } from 'kysely'
import type { z } from '#api/contract/schema.ts'
import type { Added } from '#db/add-rows.ts'
import type { WholeName } from '#db/pages.ts'
import type { PlainTable } from '#db/rows.ts'
import type { Database } from '#db/tables.ts'
import type { Adding } from './adding.ts'

type Tx = Kysely<Database>
export type RowOf<T extends PlainTable> = Selectable<Database[T]>
/** What records may belong to. */
export type Owner = 'trial' | 'session' | 'vessel'

/** What every noun declares: where its rows are kept, what it is called, how it travels. */
export type Noun<T extends PlainTable, Sent extends z.ZodType, Shown extends z.ZodObject> = {
  readonly table: T
  readonly noun: string
  readonly plural: string
  /** A measured row is corrected by a later one; any other is changed and removed. */
  readonly measured: boolean
  readonly sent: Sent
  readonly shown: Shown
  readonly present: (row: RowOf<T>) => z.output<Shown>
  /** The skeins whose conditions, wear or results hang on these rows. */
  readonly touches: (tx: Tx, rows: readonly RowOf<T>[]) => Promise<readonly string[]>
}

/** How records are written under what they belong to, and listed. */
export type Owned<T extends PlainTable, O extends Owner, New> = {
  readonly owner: O
  /** Which rows a list of what they belong to holds. */
  readonly whole: WholeName
  /** Checks and writes all of them, in the transaction. */
  readonly add: (tx: Tx, owner: RowOf<O>, items: readonly New[], adding: Adding) => Promise<Added<T>>
  /** What follows from new rows. Unless it is said, the results of the skeins that they touch. */
  readonly derive?: (tx: Tx, added: Added<T>, adding: Adding) => Promise<void>
}

/** A noun whose records belong to a trial, a session or a vessel. The types of what it declares hold each other. */
export function ownedNoun<
  const T extends PlainTable,
  Sent extends z.ZodType,
  Shown extends z.ZodObject,
  const O extends Owner,
>(it: Noun<T, Sent, Shown> & Owned<T, O, z.output<Sent>>) {
  return it
}
