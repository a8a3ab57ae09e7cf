import { type Kysely, sql } from 'kysely'

/**
 * What was changed of a trial after its first reading: who, when, why, and the whole record before and after. Rows are
 * added and read, never changed; they go with their trial alone. A trial that is older than the journal says from when
 * it was kept.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of statements) await sql.raw(statement).execute(db)
}

const statements: readonly string[] = [
  `alter table trial add column journal_from timestamptz not null default now()`,
  `create table journal (
  id uuid primary key default gen_random_uuid(),
  trial_id uuid not null references trial (id) on delete cascade,
  at timestamptz not null default clock_timestamp(),
  who text,
  why text,
  noun text not null,
  record_id uuid not null,
  action text not null check (action in ('added','changed','removed','corrected')),
  before jsonb,
  after jsonb,
  skein_ids uuid[] not null default '{}',
  check (num_nonnulls(before, after) > 0)
)`,
  `create index journal_trial on journal (trial_id, at, id)`,
  `create function refuse_change_of_journal() returns trigger language plpgsql as $$
begin
  raise exception 'the journal is not changed' using errcode = 'RC003';
end $$`,
  `create trigger journal_kept before update on journal for each row execute function refuse_change_of_journal()`,
]
