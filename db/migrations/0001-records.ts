import { type Kysely, sql } from 'kysely'

/**
 * Every table of the records, from the first day, even those that no screen uses yet.
 *
 * Measured rows (reading, outcome, rinse, stamp, exposure) are never changed: a correction is a new row that names
 * the old one in `supersedes_id`. `superseded` is derived from that, kept so that "unique among current" can be an
 * index, and is the only column of a measured row that is ever written twice.
 * Units stand in the names of columns. Times are `timestamptz`; `created_at` is the server's clock.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of statements) await sql.raw(statement).execute(db)
}

const head = `id uuid primary key default gen_random_uuid(),
  version int not null default 1,
  created_at timestamptz not null default now()`

const correction = (table: string) => `supersedes_id uuid unique references ${table} (id),
  reason text,
  superseded boolean not null default false,
  check ((supersedes_id is null) or (reason is not null))`

const stages = `('soak','dye','set','rinse','dry','wash','contact','rub','light','remedy')`

const statements: readonly string[] = [
  `create table base (
  ${head},
  name text not null,
  maker_lot text,
  composition jsonb not null default '[]',
  dyeable_percent double precision,
  superwash text not null default 'unknown' check (superwash in ('yes','no','unknown')),
  natural_l double precision, natural_a double precision, natural_b double precision
)`,
  `create table dye (
  ${head},
  name text not null,
  class text not null default 'unknown' check (class in ('levelling','fast acid','milling','super-milling','food-grade','unknown')),
  form text not null default 'powder' check (form in ('powder','liquid','gel')),
  batch text,
  grams_per_teaspoon double precision
)`,
  `create table stock (
  ${head},
  label text not null,
  parts jsonb not null,
  made_to_ml double precision not null,
  strength_percent double precision,
  made_on date
)`,
  `create table trial (
  ${head},
  title text not null,
  question text not null,
  expectation text,
  pattern text not null check (pattern in ('P0','P1','P2','P3','P4','P5','P6','P7','P8','own')),
  block text not null default 'session' check (block in ('session','vessel','parent')),
  seed bigint,
  conditions jsonb not null default '{}',
  held jsonb not null default '[]',
  invented boolean not null default false,
  archived_at timestamptz
)`,
  `create table recipe (
  ${head},
  name text not null,
  colourway text,
  edition int not null default 1 check (edition >= 1),
  made_from_trial_id uuid references trial (id),
  per100g jsonb not null default '[]',
  liquor_ml_per_g double precision,
  tolerances jsonb not null default '[]',
  unique (name, edition)
)`,
  `create table factor (
  ${head},
  trial_id uuid not null references trial (id) on delete cascade,
  key text not null,
  stage text not null check (stage in ${stages}),
  kind text not null check (kind in ('number','category')),
  ordered boolean not null,
  unit text,
  unique (trial_id, key)
)`,
  `create table level (
  ${head},
  factor_id uuid not null references factor (id) on delete cascade,
  position int not null,
  label text not null,
  value double precision,
  is_reference boolean not null default false,
  unique (factor_id, position),
  unique (factor_id, label),
  unique (id, factor_id)
)`,
  `create unique index level_one_reference on level (factor_id) where is_reference`,
  `create table rule (
  ${head},
  trial_id uuid not null references trial (id) on delete cascade,
  edition int not null check (edition >= 1),
  conditions jsonb not null,
  method text not null default 'paired' check (method in ('paired','model','pooled')),
  planned_sessions int not null check (planned_sessions >= 1),
  looks int not null default 1 check (looks >= 1),
  confidence double precision not null default 0.95 check (confidence > 0 and confidence < 1),
  locked_at timestamptz,
  reason text,
  unique (trial_id, edition),
  check (edition = 1 or reason is not null)
)`,
  // A locked rule is a promise: whatever code asks, it is not changed.
  `create function refuse_change_of_locked_rule() returns trigger language plpgsql as $$
begin
  if old.locked_at is not null then
    raise exception 'a locked rule is not changed' using errcode = 'RC001';
  end if;
  return new;
end $$`,
  `create trigger rule_locked before update on rule for each row execute function refuse_change_of_locked_rule()`,
  `create table session (
  ${head},
  trial_id uuid references trial (id) on delete cascade,
  kind text not null default 'stove' check (kind in ('stove','bench','wash','contact','rub','light','remedy')),
  held_on date,
  label text not null,
  place text,
  altitude_m double precision,
  water_alkalinity_mg_l double precision,
  conditions jsonb not null default '{}',
  note text
)`,
  `create unique index session_label on session (trial_id, kind, label) where trial_id is not null`,
  `create table vessel (
  ${head},
  session_id uuid not null references session (id) on delete cascade,
  stage text not null check (stage in ${stages}),
  kind text not null check (kind in ('pot','jar','packet','tray','bowl','card')),
  label text not null,
  equipment text,
  place text,
  drawn_order int,
  recipe_id uuid references recipe (id),
  conditions jsonb not null default '{}',
  assumed boolean not null default false,
  status text not null default 'planned' check (status in ('planned','done','lost')),
  lost_reason text,
  unique (session_id, stage, label),
  check (status <> 'lost' or lost_reason is not null)
)`,
  `create table skein (
  ${head},
  trial_id uuid references trial (id) on delete cascade,
  code text not null,
  role text not null default 'treated' check (role in ('treated','blank','twin','dark twin','known good','known bleeder','companion','blue wool','standard','bled')),
  cut_from_id uuid references skein (id),
  cut_at timestamptz,
  base_id uuid references base (id),
  mass_g double precision,
  blue_wool_number int check (blue_wool_number between 1 and 8),
  fibre text,
  conditions jsonb not null default '{}',
  status text not null default 'planned' check (status in ('planned','done','lost')),
  lost_reason text,
  unique (trial_id, code),
  check (status <> 'lost' or lost_reason is not null),
  check (blue_wool_number is null or role = 'blue wool'),
  check (cut_from_id is null or cut_from_id <> id)
)`,
  `create table placement (
  ${head},
  skein_id uuid not null references skein (id) on delete cascade,
  vessel_id uuid not null references vessel (id) on delete cascade,
  place text,
  covered boolean not null default false,
  in_at timestamptz,
  out_at timestamptz,
  unique (skein_id, vessel_id)
)`,
  `create table treatment (
  ${head},
  factor_id uuid not null references factor (id) on delete cascade,
  level_id uuid not null,
  session_id uuid references session (id) on delete cascade,
  vessel_id uuid references vessel (id) on delete cascade,
  skein_id uuid references skein (id) on delete cascade,
  foreign key (level_id, factor_id) references level (id, factor_id) on delete cascade,
  check (num_nonnulls(session_id, vessel_id, skein_id) = 1),
  unique (factor_id, session_id),
  unique (factor_id, vessel_id),
  unique (factor_id, skein_id)
)`,
  `create table stamp (
  ${head},
  session_id uuid not null references session (id) on delete cascade,
  vessel_id uuid references vessel (id) on delete cascade,
  skein_id uuid references skein (id) on delete cascade,
  kind text not null check (kind in ('in','lid on','steam seen','lid opened','out','cooled','added','deviation','lost','note')),
  at timestamptz not null,
  what text,
  entered jsonb,
  stock_id uuid references stock (id),
  grams double precision,
  ml double precision,
  ${correction('stamp')}
)`,
  `create table rinse (
  ${head},
  skein_id uuid references skein (id) on delete cascade,
  vessel_id uuid references vessel (id) on delete cascade,
  number int not null check (number >= 1),
  ml_per_g double precision,
  temperature_c double precision,
  minutes double precision,
  clarity double precision check (clarity between 1 and 5),
  detergent_g_l double precision,
  ${correction('rinse')},
  check (num_nonnulls(skein_id, vessel_id) = 1)
)`,
  `create unique index rinse_current on rinse (coalesce(skein_id, vessel_id), number) where not superseded`,
  `create table exposure (
  ${head},
  vessel_id uuid not null references vessel (id) on delete cascade,
  protocol text not null check (protocol in ('W1','W2','W3','W4','W5','W6','X0','X1','X2','X3','X4','rub dry','rub wet')),
  cycles int,
  strokes int,
  started_at timestamptz,
  ended_at timestamptz,
  dose_mlxh double precision,
  due jsonb not null default '[]',
  conditions jsonb not null default '{}',
  ${correction('exposure')}
)`,
  `create table instrument (
  ${head},
  name text not null,
  method text not null check (method in ('instrument','photo','eye')),
  sd_l double precision, sd_a double precision, sd_b double precision,
  sd_from text not null default 'planning value' check (sd_from in ('gauge check','entered','planning value')),
  checked_on date
)`,
  `create table sitting (
  ${head},
  trial_id uuid references trial (id) on delete cascade,
  method text not null check (method in ('instrument','photo','eye')),
  instrument_id uuid references instrument (id),
  at timestamptz,
  label text not null,
  illuminant text,
  observer text,
  geometry text,
  aperture_mm double precision,
  card text,
  light text,
  in_frame_standard_id uuid references skein (id),
  person text
)`,
  `create table reading (
  ${head},
  skein_id uuid not null references skein (id) on delete cascade,
  sitting_id uuid not null references sitting (id),
  "placing" int not null default 1 check ("placing" >= 1),
  wear jsonb not null default '{}',
  wear_from text not null default 'entered' check (wear_from in ('exposures','entered')),
  wet boolean not null default false,
  rested_h double precision,
  spots jsonb not null,
  blind_code text,
  taken_at timestamptz,
  mean_l double precision not null check (mean_l between 0 and 100),
  mean_a double precision not null check (mean_a between -128 and 127),
  mean_b double precision not null check (mean_b between -128 and 127),
  spots_n int not null check (spots_n between 1 and 50),
  mcdm double precision,
  spread double precision,
  clipped boolean not null default false,
  ${correction('reading')}
)`,
  `create unique index reading_current on reading (skein_id, sitting_id, "placing", wear) where not superseded`,
  `create table outcome (
  ${head},
  kind text not null,
  skein_id uuid references skein (id) on delete cascade,
  vessel_id uuid references vessel (id) on delete cascade,
  value double precision not null,
  text text,
  unit text,
  fibre text,
  companion_id uuid references skein (id),
  wear jsonb not null default '{}',
  sitting_id uuid references sitting (id),
  grader text,
  blind_code text,
  taken_at timestamptz,
  ${correction('outcome')},
  check (num_nonnulls(skein_id, vessel_id) = 1)
)`,
  `create unique index outcome_current on outcome (coalesce(skein_id, vessel_id), kind, coalesce(fibre, ''), wear, coalesce(grader, ''), coalesce(text, ''), coalesce(sitting_id, '00000000-0000-0000-0000-000000000000'))
  where not superseded`,
  `create table change (
  ${head},
  reading_id uuid not null references reading (id) on delete cascade,
  against_ids uuid[] not null,
  basis text not null check (basis in ('own','covered','twin','standard','companion')),
  d_l double precision not null, d_a double precision not null, d_b double precision not null,
  d_c double precision not null, d_h double precision not null,
  de76 double precision not null, de00 double precision not null,
  de_f double precision not null, grade text not null,
  unique (reading_id, basis)
)`,
  `create table result (
  ${head},
  trial_id uuid not null references trial (id) on delete cascade,
  skein_id uuid not null references skein (id) on delete cascade,
  session_id uuid,
  vessels jsonb not null default '{}',
  lot_id uuid,
  parent_id uuid,
  kind text not null,
  fibre text not null default '',
  basis text not null default '',
  wear jsonb not null default '{}',
  wear_key text collate "C" not null default '',
  wear_amount double precision,
  value double precision not null,
  text text,
  d_l double precision, d_a double precision, d_b double precision,
  readings_n int not null,
  spots_n int not null,
  settings text not null default '',
  resolved jsonb not null default '{}',
  first_recorded_at timestamptz not null,
  unique (skein_id, kind, fibre, basis, wear_key)
)`,
  `create table verdict (
  ${head},
  trial_id uuid not null references trial (id) on delete cascade,
  rule_edition int not null,
  look int not null,
  sessions_n int not null,
  body jsonb not null,
  declared_at timestamptz not null default now(),
  unique (trial_id, look)
)`,
  `create table evidence_sheet (
  ${head},
  trial_ids uuid[] not null,
  body jsonb not null,
  sha256 text not null,
  step text not null check (step in ('E0','E1','E2','E3','E4')),
  made_at timestamptz not null default now(),
  share_hash text,
  shared_at timestamptz,
  withdrawn_at timestamptz,
  superseded_by uuid references evidence_sheet (id)
)`,
  `create function refuse_change_of_frozen_body() returns trigger language plpgsql as $$
begin
  if new.body is distinct from old.body then
    raise exception 'what was declared or frozen is not changed' using errcode = 'RC002';
  end if;
  return new;
end $$`,
  `create trigger verdict_frozen before update on verdict for each row execute function refuse_change_of_frozen_body()`,
  `create trigger sheet_frozen before update on evidence_sheet for each row execute function refuse_change_of_frozen_body()`,
  `create table attachment (
  ${head},
  owner_kind text not null,
  owner_id uuid not null,
  media_type text not null,
  bytes bytea not null,
  sha256 text not null,
  width int,
  height int,
  kind text not null check (kind in ('photo','report')),
  check (octet_length(bytes) <= 33554432)
)`,
  `create table setting (
  ${head},
  key text not null unique,
  value jsonb not null
)`,
  `create table table_import (
  ${head},
  trial_id uuid not null references trial (id) on delete cascade,
  columns jsonb not null,
  answers jsonb not null default '{}',
  rows_n int not null,
  kept_n int not null,
  left_out jsonb not null default '[]'
)`,
  `create index factor_trial on factor (trial_id)`,
  `create index level_factor on level (factor_id)`,
  `create index session_trial on session (trial_id)`,
  `create index vessel_session on vessel (session_id)`,
  `create index placement_vessel on placement (vessel_id)`,
  `create index skein_trial on skein (trial_id)`,
  `create index skein_cut_from on skein (cut_from_id)`,
  `create index treatment_level on treatment (level_id)`,
  `create index treatment_vessel on treatment (vessel_id)`,
  `create index treatment_skein on treatment (skein_id)`,
  `create index stamp_session on stamp (session_id)`,
  `create index rinse_skein on rinse (skein_id)`,
  `create index rinse_vessel on rinse (vessel_id)`,
  `create index exposure_vessel on exposure (vessel_id)`,
  `create index sitting_trial on sitting (trial_id)`,
  `create index reading_skein on reading (skein_id)`,
  `create index reading_sitting on reading (sitting_id)`,
  `create index outcome_skein on outcome (skein_id)`,
  `create index outcome_vessel on outcome (vessel_id)`,
  `create index result_kind on result (kind, trial_id)`,
  `create index result_wear on result (trial_id, kind, wear_key)`,
  `create index verdict_trial on verdict (trial_id)`,
  `create index table_import_trial on table_import (trial_id)`,
  `create index attachment_owner on attachment (owner_kind, owner_id)`,
]
