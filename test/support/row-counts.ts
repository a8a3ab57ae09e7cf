import { type Kysely, sql } from 'kysely'
import type { Database } from '#db/tables.ts'

/** How many rows stand in each table. */
export async function rowCounts(db: Kysely<Database>): Promise<Record<string, number>> {
  const { rows: tables } = await sql<{ name: string }>`select tablename as name from pg_tables
    where schemaname = 'public' and not starts_with(tablename, 'kysely_') order by 1`.execute(db)
  const asked = tables.map(
    ({ name }) => sql`select ${name}::text as name, count(*)::int as n from ${sql.ref(name)}`,
  )
  const { rows } = await sql<{ name: string; n: number }>`${sql.join(asked, sql` union all `)}`.execute(db)
  return Object.fromEntries(rows.map(({ name, n }) => [name, n]))
}
