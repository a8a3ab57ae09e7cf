import { type Kysely, sql } from 'kysely'

/** Where the work differed from the drawn plan: the level that had been drawn, beside the level that was given. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await sql`alter table treatment add column drawn_level_id uuid references level (id) on delete set null`.execute(
    db,
  )
}
