import { type Kysely, type Selectable, sql } from 'kysely'
import { insertRows } from './add-rows.ts'
import type { ChangeTable, Database, ReadingTable, ResultTable, Spot, Wear } from './tables.ts'

export type ResultRow = Selectable<ResultTable>
export type ChangeRow = Selectable<ChangeTable>
type Derived = 'id' | 'version' | 'createdAt'
export type NewChange = Omit<ChangeRow, Derived>
export type NewResult = Omit<ResultRow, Derived>

/**
 * The results of a trial, in a fixed order: one row for each skein × kind × fibre × basis × wear.
 *
 * @param options.kinds Only these kinds of outcome.
 * @param options.wearKey Only this wear, as text (`W2=3`; empty for untouched).
 */
export async function resultsOf(
  db: Kysely<Database>,
  trialId: string,
  { kinds, wearKey }: { kinds?: readonly string[]; wearKey?: string } = {},
): Promise<ResultRow[]> {
  let query = db.selectFrom('result').selectAll().where('trialId', '=', trialId)
  if (kinds) query = query.where('kind', 'in', kinds.length > 0 ? [...kinds] : [''])
  if (wearKey !== undefined) query = query.where('wearKey', '=', wearKey)
  return query
    .orderBy('skeinId')
    .orderBy(sql`kind collate "C"`)
    .orderBy(sql`fibre collate "C"`)
    .orderBy(sql`basis collate "C"`)
    .orderBy('wearKey')
    .execute()
}

/** The changes of one reading, by basis. */
export async function changesOfReading(db: Kysely<Database>, readingId: string): Promise<ChangeRow[]> {
  return db
    .selectFrom('change')
    .selectAll()
    .where('readingId', '=', readingId)
    .orderBy(sql`basis collate "C"`)
    .execute()
}

/** Puts what was worked out for these skeins in the place of what stood there before. */
export async function replaceDerived(
  tx: Kysely<Database>,
  skeinIds: readonly string[],
  { changes, results }: { changes: readonly NewChange[]; results: readonly NewResult[] },
): Promise<void> {
  const ids = [...skeinIds]
  await sql`delete from change using reading
    where reading.id = change.reading_id and reading.skein_id = any(${ids}::uuid[])`.execute(tx)
  await sql`delete from result where skein_id = any(${ids}::uuid[])`.execute(tx)
  await insertRows(tx, 'change', changes)
  await insertRows(tx, 'result', results)
}

/** Writes the wear that readings took from their exposures: derived, so the one thing of a reading that may follow. */
export async function changeWears(
  tx: Kysely<Database>,
  readings: readonly { readonly id: string; readonly wear: Wear }[],
): Promise<void> {
  const body = JSON.stringify(readings.map(({ id, wear }) => ({ id, wear })))
  await sql`update reading set wear = it.wear
    from jsonb_to_recordset(${body}::jsonb) as it (id uuid, wear jsonb) where it.id = reading.id`.execute(tx)
}

/** The places of readings, in the order of their ids, after one of them. */
export async function spotsAfter(
  db: Kysely<Database>,
  after: string,
  limit: number,
): Promise<{ readonly id: string; readonly spots: readonly Spot[] }[]> {
  return db
    .selectFrom('reading')
    .select(['id', 'spots'])
    .where('id', '>', after)
    .orderBy('id')
    .limit(limit)
    .execute()
}

type Means = Pick<
  Selectable<ReadingTable>,
  'id' | 'meanL' | 'meanA' | 'meanB' | 'spotsN' | 'mcdm' | 'spread' | 'clipped'
>

/** Writes what is worked out from the places of readings. */
export async function changeMeans(db: Kysely<Database>, readings: readonly Means[]): Promise<void> {
  const body = JSON.stringify(readings)
  await sql`update reading set mean_l = it."meanL", mean_a = it."meanA", mean_b = it."meanB", spots_n = it."spotsN",
      mcdm = it.mcdm, spread = it.spread, clipped = it.clipped
    from jsonb_to_recordset(${body}::jsonb) as it (id uuid, "meanL" float8, "meanA" float8, "meanB" float8,
      "spotsN" int, mcdm float8, spread float8, clipped boolean)
    where it.id = reading.id`.execute(db)
}
