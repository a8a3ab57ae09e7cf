import { type Kysely, sql } from 'kysely'

/**
 * Where a second factor splits a trial, a verdict speaks of one of its levels: a look is kept once for each of them.
 * Verdicts that were declared before have their level in their body.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of statements) await sql.raw(statement).execute(db)
}

const statements: readonly string[] = [
  `alter table verdict add column within_level_id uuid references level (id)`,
  `update verdict set within_level_id = level.id from level
  where level.id::text = verdict.body -> 'within' ->> 'levelId'`,
  `alter table verdict drop constraint verdict_trial_id_look_key`,
  `create unique index verdict_once on verdict (trial_id, look, within_level_id) nulls not distinct`,
]
