import { type Kysely, type Selectable, sql } from 'kysely'
import { grouped } from './grouped.ts'
import type { Conditions, Database, Protocol, Role, SittingTable, Stage, Wear } from './tables.ts'

export type Family = { readonly root: string; readonly ids: readonly string[] }

/** The whole families (everything cut from one skein) of these skeins: a change in one may be felt by the others. */
export async function familiesOf(db: Kysely<Database>, skeinIds: readonly string[]): Promise<Family[]> {
  if (skeinIds.length === 0) return []
  const { rows } = await sql<{ id: string; root: string }>`
    with recursive up as (
      select id, cut_from_id from skein where id = any(${[...skeinIds]}::uuid[])
      union
      select skein.id, skein.cut_from_id from skein join up on skein.id = up.cut_from_id
    ), down as (
      select id, id as root from up where cut_from_id is null
      union
      select skein.id, down.root from skein join down on skein.cut_from_id = down.id
    )
    select id, root from down order by root, id`.execute(db)
  const families = new Map<string, string[]>()
  for (const { id, root } of rows) {
    const ids = families.get(root)
    if (ids) ids.push(id)
    else families.set(root, [id])
  }
  return [...families].map(([root, ids]) => ({ root, ids }))
}

/** Every skein of the trials in which one of these is the standard: all are compared with it. */
export async function comparedWithStandards(
  db: Kysely<Database>,
  skeinIds: readonly string[],
): Promise<string[]> {
  if (skeinIds.length === 0) return []
  const { rows } = await sql<{ id: string }>`select id from skein where trial_id in (
    select trial_id from skein where role = 'standard' and id = any(${[...skeinIds]}::uuid[]))`.execute(db)
  return rows.map((row) => row.id)
}

/** Keeps two writers from deriving the same rows at once; always in one order, so that neither waits for the other. */
export async function holdSkeins(db: Kysely<Database>, skeinIds: readonly string[]): Promise<void> {
  await sql`select id from skein where id = any(${[...skeinIds]}::uuid[]) order by id for no key update`.execute(
    db,
  )
}

export type SkeinSeen = {
  readonly id: string
  readonly trialId: string | null
  readonly role: Role
  readonly cutFromId: string | null
  readonly cutAt: Date | null
  readonly massG: number | null
  readonly fibre: string | null
  readonly conditions: Conditions
}

export type PlaceSeen = {
  readonly skeinId: string
  readonly vesselId: string
  readonly covered: boolean
  readonly inAt: Date | null
  readonly outAt: Date | null
  readonly stage: Stage
  readonly sessionId: string
  readonly heldOn: string | null
  readonly altitudeM: number | null
  readonly waterAlkalinityMgL: number | null
  readonly vesselConditions: Conditions
  readonly sessionConditions: Conditions
}

export type ExposureSeen = {
  readonly vesselId: string
  readonly protocol: Protocol
  readonly cycles: number | null
  readonly strokes: number | null
  readonly startedAt: Date | null
  readonly endedAt: Date | null
  readonly conditions: Conditions
}

export type Histories = {
  readonly skeins: ReadonlyMap<string, SkeinSeen>
  readonly places: ReadonlyMap<string, readonly PlaceSeen[]>
  readonly exposures: ReadonlyMap<string, readonly ExposureSeen[]>
}

/** What these skeins have been through. Give whole families: a part shares its parent's history up to the cut. */
export async function historiesOf(db: Kysely<Database>, skeinIds: readonly string[]): Promise<Histories> {
  const ids = [...skeinIds]
  const skeins =
    await sql<SkeinSeen>`select id, trial_id, role, cut_from_id, cut_at, mass_g, fibre, conditions
    from skein where id = any(${ids}::uuid[])`.execute(db)
  const places = await sql<PlaceSeen>`select p.skein_id, p.vessel_id, p.covered, p.in_at, p.out_at,
      v.stage, v.session_id, v.conditions as vessel_conditions,
      s.held_on, s.altitude_m, s.water_alkalinity_mg_l, s.conditions as session_conditions
    from placement p join vessel v on v.id = p.vessel_id join session s on s.id = v.session_id
    where p.skein_id = any(${ids}::uuid[])
    order by coalesce(p.in_at, s.held_on::timestamptz), p.created_at, p.id`.execute(db)
  const vesselIds = [...new Set(places.rows.map((place) => place.vesselId))]
  const exposures =
    await sql<ExposureSeen>`select vessel_id, protocol, cycles, strokes, started_at, ended_at, conditions
    from exposure where not superseded and vessel_id = any(${vesselIds}::uuid[]) order by created_at, id`.execute(
      db,
    )
  return {
    skeins: new Map(skeins.rows.map((skein) => [skein.id, skein])),
    places: grouped(places.rows, (place) => place.skeinId),
    exposures: grouped(exposures.rows, (exposure) => exposure.vesselId),
  }
}

/** A reading as it was kept, with the settings of its sitting. */
export type ReadingKept = {
  readonly id: string
  readonly skeinId: string
  readonly sittingId: string
  readonly wear: Wear
  readonly wearFrom: 'exposures' | 'entered'
  readonly wet: boolean
  readonly takenAt: Date | null
  readonly createdAt: Date
  readonly meanL: number
  readonly meanA: number
  readonly meanB: number
  readonly spotsN: number
  readonly mcdm: number | null
  readonly spread: number | null
} & Pick<
  Selectable<SittingTable>,
  'method' | 'illuminant' | 'observer' | 'geometry' | 'apertureMm' | 'inFrameStandardId' | 'at' | 'label'
>

const readingColumns = sql`r.id, r.skein_id, r.sitting_id, r.wear, r.wear_from, r.wet, r.taken_at, r.created_at, r.mean_l,
  r.mean_a, r.mean_b, r.spots_n, r.mcdm, r.spread, s.method, s.illuminant, s.observer, s.geometry, s.aperture_mm,
  s.in_frame_standard_id, s.at, s.label`

/** The current readings of these skeins, oldest first. */
export async function readingsOf(db: Kysely<Database>, skeinIds: readonly string[]): Promise<ReadingKept[]> {
  const { rows } = await sql<ReadingKept>`select ${readingColumns}
    from reading r join sitting s on s.id = r.sitting_id
    where not r.superseded and r.skein_id = any(${[...skeinIds]}::uuid[])
    order by r.created_at, r.id`.execute(db)
  return rows
}

/** The current untouched readings of the standards of these trials, each with its trial. */
export async function standardsOf(
  db: Kysely<Database>,
  trialIds: readonly string[],
): Promise<(ReadingKept & { readonly trialId: string })[]> {
  const { rows } = await sql<ReadingKept & { trialId: string }>`select ${readingColumns}, k.trial_id
    from reading r join sitting s on s.id = r.sitting_id join skein k on k.id = r.skein_id
    where not r.superseded and r.wear = '{}' and k.role = 'standard' and k.trial_id = any(${[...trialIds]}::uuid[])
    order by r.created_at, r.id`.execute(db)
  return rows
}

export type OutcomeKept = {
  readonly skeinId: string | null
  readonly vesselId: string | null
  readonly kind: string
  readonly value: number
  readonly text: string | null
  readonly fibre: string | null
  readonly wear: Wear
  readonly takenAt: Date | null
  readonly createdAt: Date
}

/** The current outcomes of these skeins and of these vessels, oldest first. */
export async function outcomesOf(
  db: Kysely<Database>,
  { skeinIds, vesselIds }: { skeinIds: readonly string[]; vesselIds: readonly string[] },
): Promise<OutcomeKept[]> {
  const { rows } =
    await sql<OutcomeKept>`select skein_id, vessel_id, kind, value, text, fibre, wear, taken_at, created_at
    from outcome where not superseded
    and (skein_id = any(${[...skeinIds]}::uuid[]) or vessel_id = any(${[...vesselIds]}::uuid[]))
    order by created_at, id`.execute(db)
  return rows
}

export type RinseKept = {
  readonly skeinId: string | null
  readonly vesselId: string | null
  readonly number: number
  readonly clarity: number | null
  readonly createdAt: Date
}

/** The current rinses of these skeins and of these vessels, in their order. */
export async function rinsesOf(
  db: Kysely<Database>,
  { skeinIds, vesselIds }: { skeinIds: readonly string[]; vesselIds: readonly string[] },
): Promise<RinseKept[]> {
  const { rows } = await sql<RinseKept>`select skein_id, vessel_id, number, clarity, created_at
    from rinse where not superseded
    and (skein_id = any(${[...skeinIds]}::uuid[]) or vessel_id = any(${[...vesselIds]}::uuid[]))
    order by number, created_at, id`.execute(db)
  return rows
}

export type TrialSeen = {
  readonly id: string
  readonly conditions: Conditions
  /** The stage of the trial's first factor. */
  readonly stage: Stage | null
}

export async function trialsSeen(
  db: Kysely<Database>,
  trialIds: readonly string[],
): Promise<Map<string, TrialSeen>> {
  const { rows } = await sql<TrialSeen>`select id, conditions,
      (select stage from factor where trial_id = trial.id order by created_at, id limit 1) as stage
    from trial where id = any(${[...trialIds]}::uuid[])`.execute(db)
  return new Map(rows.map((row) => [row.id, row]))
}
