import { type Kysely, type Selectable, sql } from 'kysely'
import { theRow } from './rows.ts'
import type {
  Conditions,
  Database,
  JournalAction,
  JournalTable,
  Method,
  Protocol,
  ResultTable,
  Role,
  SessionTable,
  Stage,
  Status,
  VesselTable,
  Wear,
} from './tables.ts'
import { factorsOf, rulesOf } from './trials.ts'

export type SessionSeen = Selectable<SessionTable>
export type VesselSeen = Selectable<VesselTable>
export type ResultSeen = Selectable<ResultTable>
export type SkeinRecord = {
  readonly id: string
  readonly code: string
  readonly role: Role
  readonly cutFromId: string | null
  readonly status: Status
  readonly lostReason: string | null
  readonly baseId: string | null
  readonly base: string | null
  readonly massG: number | null
  readonly blueWoolNumber: number | null
}
export type PlaceRecord = {
  readonly id: string
  readonly skeinId: string
  readonly vesselId: string
  readonly place: string | null
  readonly covered: boolean
}
export type TreatmentRecord = {
  readonly id: string
  readonly factorId: string
  readonly levelId: string
  /** Where the work differed from the drawn plan: the level that had been drawn. */
  readonly drawnLevelId: string | null
  readonly sessionId: string | null
  readonly vesselId: string | null
  readonly skeinId: string | null
}
/** The mean colour of a skein in one wear, over its current readings. */
export type ColourRecord = {
  readonly skeinId: string
  readonly wear: Wear
  readonly l: number
  readonly a: number
  readonly b: number
  readonly readingsN: number
  readonly spotsN: number
}
/** One current reading with how it was taken: what is judged for being measured alike, and what the measuring error comes from. */
export type ReadingSeen = {
  readonly id: string
  readonly skeinId: string
  readonly wear: Wear
  readonly wet: boolean
  readonly placing: number
  readonly meanL: number
  readonly meanA: number
  readonly meanB: number
  readonly spotsN: number
  readonly blindCode: string | null
  readonly supersedesId: string | null
  readonly reason: string | null
  /** When it was taken by the person’s clock, else when its sitting was. */
  readonly takenAt: Date | null
  readonly createdAt: Date
  readonly sittingId: string
  readonly method: Method
  readonly instrumentId: string | null
  readonly illuminant: string | null
  readonly observer: string | null
  readonly geometry: string | null
  readonly apertureMm: number | null
  readonly inFrameStandardId: string | null
  readonly person: string | null
}
/** One current grading, count or measurement, with who gave it. */
export type OutcomeSeen = {
  readonly id: string
  readonly skeinId: string | null
  readonly vesselId: string | null
  readonly kind: string
  readonly fibre: string | null
  readonly value: number
  readonly wearKey: string
  readonly grader: string | null
  readonly blindCode: string | null
  readonly supersedesId: string | null
  readonly reason: string | null
  readonly takenAt: Date | null
  readonly createdAt: Date
}
/** What the vessels of a trial were put through, as it was recorded: the most specific conditions win. */
export type ExposureRecord = {
  readonly vesselId: string
  readonly protocol: Protocol
  readonly conditions: Conditions
}
/** Under which light and observer the skeins of a trial were read. */
export type ViewingRecord = {
  readonly skeinId: string
  readonly illuminant: string | null
  readonly observer: string | null
}
/** A change of what is judged, made after the first reading. */
export type JournalSeen = Pick<
  Selectable<JournalTable>,
  'noun' | 'recordId' | 'before' | 'after' | 'at' | 'who' | 'why'
> & { readonly action: JournalAction }
/** An unchanged skein read again: a difference that is noise, or drift. */
export type TwinRecord = {
  readonly skeinId: string
  readonly code: string
  readonly dE00: number
  /** Null where the difference alone was entered, without its readings. */
  readonly shift: readonly [number, number, number] | null
  readonly wear: Wear
  readonly sittingId: string | null
  /** When it was read, as far as that was written down. */
  readonly at: Date | null
}

/** Everything that a finding reads of one trial. */
export async function trialRecord(db: Kysely<Database>, trialId: string) {
  const trial = await theRow(db, 'trial', trialId, 'trial')
  const factors = await factorsOf(db, trialId)
  const rules = await rulesOf(db, trialId)
  const { rows: skeins } =
    await sql<SkeinRecord>`select k.id, k.code, k.role, k.cut_from_id, k.status, k.lost_reason,
      k.base_id, base.name as base, k.mass_g, k.blue_wool_number
    from skein k left join base on base.id = k.base_id where k.trial_id = ${trialId} order by k.created_at, k.id`.execute(
      db,
    )
  const { rows: places } = await sql<PlaceRecord>`select p.id, p.skein_id, p.vessel_id, p.place, p.covered
    from placement p join skein k on k.id = p.skein_id where k.trial_id = ${trialId} order by p.created_at, p.id`.execute(
    db,
  )
  const { rows: vessels } = await sql<VesselSeen>`select v.* from vessel v where v.id in (
      select p.vessel_id from placement p join skein k on k.id = p.skein_id where k.trial_id = ${trialId}
    ) or v.session_id in (select id from session where trial_id = ${trialId})
    order by v.drawn_order, v.created_at, v.id`.execute(db)
  const sessionIds = [...new Set(vessels.map((vessel) => vessel.sessionId))]
  const { rows: sessions } = await sql<SessionSeen>`select * from session where trial_id = ${trialId}
    or id = any(${sessionIds}::uuid[]) order by held_on, created_at, id`.execute(db)
  const { rows: treatments } =
    await sql<TreatmentRecord>`select t.id, t.factor_id, t.level_id, t.drawn_level_id, t.session_id, t.vessel_id, t.skein_id
    from treatment t join factor f on f.id = t.factor_id where f.trial_id = ${trialId}`.execute(db)
  const results = await db.selectFrom('result').selectAll().where('trialId', '=', trialId).execute()
  const { rows: colours } =
    await sql<ColourRecord>`select r.skein_id, r.wear, avg(r.mean_l) as l, avg(r.mean_a) as a,
      avg(r.mean_b) as b, count(*)::int as readings_n, sum(r.spots_n)::int as spots_n
    from reading r join skein k on k.id = r.skein_id
    where k.trial_id = ${trialId} and not r.superseded and not r.wet group by r.skein_id, r.wear`.execute(db)
  const { rows: methods } = await sql<{
    method: string
    instrumentId: string | null
    sdL: number | null
    sdA: number | null
    sdB: number | null
    instrument: string | null
    sdFrom: string | null
    readingsN: number
    corrected: number
  }>`
    select s.method, s.instrument_id, i.sd_l, i.sd_a, i.sd_b, i.name as instrument, i.sd_from, count(*)::int as readings_n,
      (count(*) filter (where r.supersedes_id is not null))::int as corrected
    from reading r join skein k on k.id = r.skein_id join sitting s on s.id = r.sitting_id left join instrument i on i.id = s.instrument_id
    where k.trial_id = ${trialId} and not r.superseded group by 1, 2, 3, 4, 5, 6, 7 order by 8 desc`.execute(
    db,
  )
  const { rows: graders } = await sql<{ grader: string | null; blindCode: string | null; kind: string }>`
    select distinct o.grader, o.blind_code, o.kind from outcome o left join skein k on k.id = o.skein_id
    where k.trial_id = ${trialId} and not o.superseded`.execute(db)
  const { rows: exposures } =
    await sql<ExposureRecord>`select e.vessel_id, e.protocol, s.conditions || v.conditions || e.conditions as conditions
    from exposure e join vessel v on v.id = e.vessel_id join session s on s.id = v.session_id
    where not e.superseded and e.vessel_id in (
      select p.vessel_id from placement p join skein k on k.id = p.skein_id where k.trial_id = ${trialId}
    ) order by e.created_at, e.id`.execute(db)
  const { rows: viewings } = await sql<ViewingRecord>`select distinct r.skein_id, s.illuminant, s.observer
    from reading r join skein k on k.id = r.skein_id join sitting s on s.id = r.sitting_id
    where k.trial_id = ${trialId} and not r.superseded`.execute(db)
  const { rows: reports } = await sql<{ n: number }>`select count(*)::int as n from attachment
    where owner_kind = 'trial' and owner_id = ${trialId} and kind = 'report'`.execute(db)
  const { rows: readings } =
    await sql<ReadingSeen>`select r.id, r.skein_id, r.wear, r.wet, r.placing, r.mean_l, r.mean_a, r.mean_b,
      r.spots_n, r.blind_code, r.supersedes_id, r.reason, coalesce(r.taken_at, s.at) as taken_at, r.created_at, r.sitting_id,
      s.method, s.instrument_id, s.illuminant, s.observer, s.geometry, s.aperture_mm, s.in_frame_standard_id, s.person
    from reading r join skein k on k.id = r.skein_id join sitting s on s.id = r.sitting_id
    where k.trial_id = ${trialId} and not r.superseded order by r.created_at, r.id`.execute(db)
  const { rows: outcomes } = await sql<
    Omit<OutcomeSeen, 'wearKey'> & { wear: Wear }
  >`select o.id, o.skein_id, o.vessel_id,
      o.kind, o.fibre, o.value, o.wear, o.grader, o.blind_code, o.supersedes_id, o.reason, o.taken_at, o.created_at
    from outcome o join skein k on k.id = o.skein_id
    where k.trial_id = ${trialId} and not o.superseded order by o.created_at, o.id`.execute(db)
  const journal: JournalSeen[] = await db
    .selectFrom('journal')
    .select(['noun', 'recordId', 'action', 'before', 'after', 'at', 'who', 'why'])
    .where('trialId', '=', trialId)
    .orderBy('at')
    .orderBy('id')
    .execute()
  return {
    trial,
    factors,
    rules,
    skeins,
    places,
    vessels,
    sessions,
    treatments,
    results,
    colours,
    readings,
    journal,
    outcomes: outcomes.map(({ wear, ...outcome }): OutcomeSeen => ({ ...outcome, wearKey: keyOfWear(wear) })),
    methods,
    exposures,
    viewings,
    graders,
    reports: reports[0]?.n ?? 0,
    twins: await twinsOf(db, trialId),
  }
}

function keyOfWear(wear: Wear): string {
  return Object.keys(wear)
    .sort()
    .map((axis) => `${axis}=${wear[axis]}`)
    .join(',')
}

export type TrialRecord = Awaited<ReturnType<typeof trialRecord>>

/** What the trial's twins show when they are read again: from readings, and from differences that were entered. */
async function twinsOf(db: Kysely<Database>, trialId: string): Promise<TwinRecord[]> {
  const { rows } = await sql<{
    skeinId: string
    code: string
    de00: number
    dL: number | null
    dA: number | null
    dB: number | null
    wear: Wear
    sittingId: string | null
    at: Date | null
  }>`
    select k.id as skein_id, k.code, c.de00, c.d_l, c.d_a, c.d_b, r.wear, r.sitting_id, coalesce(r.taken_at, s.at) as at
      from change c join reading r on r.id = c.reading_id join skein k on k.id = r.skein_id
      join sitting s on s.id = r.sitting_id
      where k.trial_id = ${trialId} and k.role in ('twin', 'dark twin') and c.basis = 'own' and not r.superseded
    union all
    select k.id, k.code, o.value, null, null, null, o.wear, o.sitting_id, coalesce(o.taken_at, s.at)
      from outcome o join skein k on k.id = o.skein_id left join sitting s on s.id = o.sitting_id
      where k.trial_id = ${trialId} and k.role in ('twin', 'dark twin') and o.kind = 'dE00' and not o.superseded`.execute(
    db,
  )
  return rows.map(({ skeinId, code, de00, dL, dA, dB, wear, sittingId, at }) => ({
    skeinId,
    code,
    dE00: de00,
    wear,
    sittingId,
    at,
    shift: dL === null || dA === null || dB === null ? null : [dL, dA, dB],
  }))
}

export type { Stage }
