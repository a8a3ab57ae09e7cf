import type { Kysely, Selectable } from 'kysely'
import type { Doubt } from '#api/contract/one-or-many.ts'
import type { z } from '#api/contract/schema.ts'
import type { Added, NewRow } from '#db/add-rows.ts'
import type { Owned } from '#db/belonging.ts'
import type { WholeName } from '#db/pages.ts'
import type { PlainTable } from '#db/rows.ts'
import type { SkeinChange } from '#db/skein-change.ts'
import type { Database } from '#db/tables.ts'
import type { Adding } from './adding.ts'

type Tx = Kysely<Database>
export type RowOf<T extends PlainTable> = Selectable<Database[T]>
/** What records may belong to. */
export type Owner = 'trial' | 'session' | 'vessel'

/** What every noun declares: where its rows are kept, what it is called, how it travels, what hangs on it. */
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
  /** False where no result hangs on it. */
  readonly derives?: boolean
  /** Findings read it: what is changed of it after the first reading stays in the journal. */
  readonly judged?: Judged<T>
  /** Refuses a removal that no foreign key would, with its reason. */
  readonly keep?: (tx: Tx, row: RowOf<T>) => Promise<void>
}

export type Judged<T extends PlainTable> = {
  /** Columns in which no finding looks: names and notes. */
  readonly but: readonly (keyof RowOf<T>)[]
  /** Where it is found which trial a row is of. */
  readonly of: (row: RowOf<T>) => { readonly table: Owned; readonly id: string | null }
}

/** How records are written: checked, and all in the transaction. */
export type Written<T extends PlainTable, O, New> = {
  readonly add: (tx: Tx, owner: O, items: readonly New[], adding: Adding) => Promise<Added<T>>
  /** What follows from new rows. Unless it is said, the results of the skeins that they touch. */
  readonly derive?: (tx: Tx, added: Added<T>, adding: Adding) => Promise<void>
}

/** What they belong to, and which rows the list of it holds. */
export type Under<O extends Owner> = { readonly owner: O; readonly whole: WholeName }

/** How a record is changed. */
export type Changed<T extends PlainTable, Part extends z.ZodType> = {
  readonly changed: Part
  /** Checks a change against what stands, and gives the columns to set. */
  readonly prepare: (tx: Tx, before: RowOf<T>, sent: z.output<Part>, doubts: Doubt[]) => Promise<NewRow<T>>
  /** What else follows from a change, before results are worked out anew: the skeins that it changed. */
  readonly follow?: (tx: Tx, before: RowOf<T>, after: RowOf<T>) => Promise<readonly SkeinChange[]>
}

/** A noun whose records belong to something and are not changed. The types of what is declared hold each other. */
export function ownedNoun<
  const T extends PlainTable,
  Sent extends z.ZodType,
  Shown extends z.ZodObject,
  const O extends Owner,
>(it: Noun<T, Sent, Shown> & Under<O> & Written<T, RowOf<O>, z.output<Sent>>) {
  return it
}

/** A noun whose records are changed and removed, and belong to something. */
export function plainNoun<
  const T extends PlainTable,
  Sent extends z.ZodType,
  Shown extends z.ZodObject,
  const O extends Owner,
  Part extends z.ZodType,
>(it: Noun<T, Sent, Shown> & Under<O> & Written<T, RowOf<O>, z.output<Sent>> & Changed<T, Part>) {
  return it
}

/** A noun whose records are changed and removed, and belong to nothing. */
export function freeNoun<
  const T extends PlainTable,
  Sent extends z.ZodType,
  Shown extends z.ZodObject,
  Part extends z.ZodType,
>(it: Noun<T, Sent, Shown> & Written<T, null, z.output<Sent>> & Changed<T, Part>) {
  return it
}
