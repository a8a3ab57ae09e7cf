import { type Kysely, sql } from 'kysely'

/**
 * A part of a trial that varies more than two things is several levels together. A verdict keeps which part it speaks of
 * as the ids of those levels, joined by “+”; “” is of the whole trial. A look is kept once for each part.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of statements) await sql.raw(statement).execute(db)
}

const statements: readonly string[] = [
  `alter table verdict add column stratum text not null default ''`,
  `update verdict set stratum = within_level_id::text where within_level_id is not null`,
  `drop index verdict_once`,
  `create unique index verdict_once on verdict (trial_id, look, stratum)`,
]
