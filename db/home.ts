import { type Kysely, sql } from 'kysely'
import type { Database, Protocol } from './tables.ts'
import type { RuleRow } from './trials.ts'

export type OpenTrialRow = {
  readonly id: string
  readonly title: string
  readonly question: string
  readonly invented: boolean
  readonly pattern: string
  /** Changes whenever something changes that a finding is made of. */
  readonly stamp: string
  readonly results: number
  /** When the last result was written down. */
  readonly last: Date | null
}

/** Trials that are not archived, those in which something was last written first. */
export async function openTrials(
  db: Kysely<Database>,
  { most }: { readonly most: number },
): Promise<OpenTrialRow[]> {
  const { rows } = await sql<OpenTrialRow>`
    with seen as (
      select trial_id, count(*)::int as results, max(created_at) as last from result group by trial_id
    ), skeins as (
      select trial_id, count(*) || '.' || coalesce(sum(version), 0) as mark from skein group by trial_id
    ), places as (
      select session.trial_id, count(*) || '.' || coalesce(sum(vessel.version), 0) as mark
      from vessel join session on session.id = vessel.session_id group by session.trial_id
    ), rules as (
      select trial_id, count(*) || '.' || coalesce(sum(version), 0) as mark from rule group by trial_id
    )
    select trial.id, trial.title, trial.question, trial.invented, trial.pattern,
      coalesce(seen.results, 0) as results, seen.last,
      concat_ws('/', trial.version, seen.results, seen.last, skeins.mark, places.mark, rules.mark) as stamp
    from trial
      left join seen on seen.trial_id = trial.id
      left join skeins on skeins.trial_id = trial.id
      left join places on places.trial_id = trial.id
      left join rules on rules.trial_id = trial.id
    where trial.archived_at is null
    order by greatest(trial.created_at, seen.last) desc, trial.id
    limit ${most}`.execute(db)
  return rows
}

export type BenchSessionRow = {
  readonly trialId: string
  readonly sessionId: string
  readonly label: string
  readonly kind: string
  readonly heldOn: string | null
  readonly skeins: number
  /** Of these with any reading or outcome. */
  readonly begun: number
  readonly vessels: number
  /** Of the first vessel: “packet”. */
  readonly vesselKind: string
  readonly vesselsDone: number
}

/** The sessions in which levels were given, with how far each has come. */
export async function benchSessions(
  db: Kysely<Database>,
  trialIds: readonly string[],
): Promise<BenchSessionRow[]> {
  if (trialIds.length === 0) return []
  const { rows } = await sql<BenchSessionRow>`
    with piece as (
      select distinct session.trial_id, session.id as session_id, vessel.id as vessel_id, vessel.kind, vessel.status, skein.id as skein_id
      from placement
        join skein on skein.id = placement.skein_id
        join vessel on vessel.id = placement.vessel_id
        join session on session.id = vessel.session_id
      where session.trial_id = any(${[...trialIds]}::uuid[])
        and session.kind not in ('wash', 'contact', 'rub')
        and skein.role = 'treated' and skein.status <> 'lost' and not placement.covered
        and exists (
          select from treatment
          where treatment.vessel_id = vessel.id or treatment.skein_id = coalesce(skein.cut_from_id, skein.id)
        )
    ), begun as (
      select skein_id from reading where skein_id in (select skein_id from piece)
      union
      select skein_id from outcome where skein_id in (select skein_id from piece)
      union
      select piece.skein_id from piece join outcome on outcome.vessel_id = piece.vessel_id
    )
    select piece.trial_id as "trialId", piece.session_id as "sessionId", session.label, session.kind, session.held_on as "heldOn",
      count(distinct piece.skein_id)::int as skeins,
      count(distinct begun.skein_id)::int as begun,
      count(distinct piece.vessel_id)::int as vessels, min(piece.kind) as "vesselKind",
      count(distinct piece.vessel_id) filter (where piece.status = 'done')::int as "vesselsDone"
    from piece
      join session on session.id = piece.session_id
      left join begun on begun.skein_id = piece.skein_id
    group by piece.trial_id, piece.session_id, session.label, session.kind, session.held_on, session.created_at
    order by session.created_at, session.label`.execute(db)
  return rows
}

export type ReadAtWearRow = {
  readonly trialId: string
  readonly sessionId: string | null
  readonly kind: string
  readonly wearKey: string
  readonly skeins: number
}

/** How many skeins of each session have a result, by outcome and wear. */
export async function readAtWear(
  db: Kysely<Database>,
  trialIds: readonly string[],
): Promise<ReadAtWearRow[]> {
  if (trialIds.length === 0) return []
  return db
    .selectFrom('result')
    .select((is) => [
      'trialId',
      'sessionId',
      'kind',
      'wearKey',
      is.cast<number>(is.fn.count('skeinId').distinct(), 'int4').as('skeins'),
    ])
    .where('trialId', 'in', [...trialIds])
    .groupBy(['trialId', 'sessionId', 'kind', 'wearKey'])
    .execute()
}

export type DueExposureRow = {
  readonly trialId: string
  readonly sessionId: string
  readonly label: string
  readonly protocol: Protocol
  readonly day: string
  readonly startedAt: Date | null
  readonly vessels: number
  readonly skeins: number
}

/** Readings that exposures make due: each date after which no piece of the vessel was read yet. */
export async function dueExposures(
  db: Kysely<Database>,
  trialIds: readonly string[],
): Promise<DueExposureRow[]> {
  if (trialIds.length === 0) return []
  const { rows } = await sql<DueExposureRow>`
    with planned as (
      select exposure.id, exposure.vessel_id, exposure.protocol, exposure.started_at, due.day::date as day
      from exposure cross join lateral jsonb_array_elements_text(exposure.due) as due(day)
      where not exposure.superseded
    ), open as (
      select planned.*, skein.trial_id, skein.id as skein_id
      from planned
        join placement on placement.vessel_id = planned.vessel_id
        join skein on skein.id = placement.skein_id
      where skein.trial_id = any(${[...trialIds]}::uuid[]) and skein.status <> 'lost'
        and not exists (
          select from placement as beside
            left join reading on reading.skein_id = beside.skein_id
            left join outcome on outcome.skein_id = beside.skein_id
          where beside.vessel_id = planned.vessel_id
            and greatest(
              coalesce(reading.taken_at, reading.created_at), coalesce(outcome.taken_at, outcome.created_at)
            )::date >= planned.day
            and coalesce(reading.wear, outcome.wear) <> '{}'::jsonb
        )
    )
    select open.trial_id as "trialId", session.id as "sessionId", session.label, open.protocol, open.day::text as day,
      min(open.started_at) as "startedAt",
      count(distinct open.vessel_id)::int as vessels, count(distinct open.skein_id)::int as skeins
    from open
      join vessel on vessel.id = open.vessel_id
      join session on session.id = vessel.session_id
    group by open.trial_id, session.id, session.label, open.protocol, open.day
    order by open.day`.execute(db)
  return rows
}

/** Every edition of the rules of these trials, oldest first. */
export async function rulesOfTrials(db: Kysely<Database>, trialIds: readonly string[]): Promise<RuleRow[]> {
  if (trialIds.length === 0) return []
  return db
    .selectFrom('rule')
    .selectAll()
    .where('trialId', 'in', [...trialIds])
    .orderBy('edition')
    .execute()
}
