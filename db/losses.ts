import { type Kysely, sql } from 'kysely'
import { type SkeinChange, type SkeinRow, skeinChangeIn, type Was, was } from './skein-change.ts'
import type { Database } from './tables.ts'

/**
 * Makes the skeins of lost vessels lost, with the vessel's reason: those that lay in it, and the parts that were cut
 * from them afterwards. What was cut off before is not touched, nor what was lost already.
 *
 * @returns the skeins that are lost now and were not before
 */
export async function loseSkeinsOf(
  tx: Kysely<Database>,
  { vesselIds }: { readonly vesselIds: readonly string[] },
): Promise<SkeinChange[]> {
  const { rows } = await sql<SkeinRow & Was>`
    with recursive gone as (
      select p.skein_id as id, p.in_at, v.label || ': ' || v.lost_reason as reason
      from placement p join vessel v on v.id = p.vessel_id
      where v.status = 'lost' and v.id = any(${[...vesselIds]}::uuid[])
      union
      select skein.id, gone.in_at, gone.reason from skein join gone on skein.cut_from_id = gone.id
      where skein.cut_at is null or gone.in_at is null or skein.cut_at > gone.in_at
    )
    update skein set status = 'lost', lost_reason = gone.reason, version = skein.version + 1
    from (select distinct on (id) id, reason from gone order by id, reason) gone
      join skein old on old.id = gone.id
    where skein.id = gone.id and skein.status <> 'lost' returning skein.*, ${was}`.execute(tx)
  return rows.map(skeinChangeIn)
}

/** Takes back the losses that came from this vessel alone, now that it is not lost after all. */
export async function findSkeinsOf(
  tx: Kysely<Database>,
  { label, lostReason, status }: { label: string; lostReason: string; status: 'planned' | 'done' },
  vesselId: string,
): Promise<SkeinChange[]> {
  const { rows } = await sql<SkeinRow & Was>`with recursive back as (
      select skein_id as id from placement where vessel_id = ${vesselId}
      union
      select skein.id from skein join back on skein.cut_from_id = back.id
    )
    update skein set status = ${status}, lost_reason = null, version = skein.version + 1
    from back join skein old on old.id = back.id
    where skein.id = back.id and skein.status = 'lost' and skein.lost_reason = ${`${label}: ${lostReason}`}
    returning skein.*, ${was}`.execute(tx)
  return rows.map(skeinChangeIn)
}

/** The skeins that lie in these vessels; their parts come with their families. */
export async function skeinsIn(
  db: Kysely<Database>,
  { vesselIds = [], sessionIds = [] }: { vesselIds?: readonly string[]; sessionIds?: readonly string[] },
): Promise<string[]> {
  const { rows } = await sql<{ id: string }>`select distinct p.skein_id as id
    from placement p join vessel v on v.id = p.vessel_id
    where v.id = any(${[...vesselIds]}::uuid[]) or v.session_id = any(${[...sessionIds]}::uuid[])`.execute(db)
  return rows.map((row) => row.id)
}

/** Every skein of a trial. */
export async function skeinsOfTrial(db: Kysely<Database>, trialId: string): Promise<string[]> {
  const { rows } = await sql<{ id: string }>`select id from skein where trial_id = ${trialId}`.execute(db)
  return rows.map((row) => row.id)
}

/** The skeins that were read in these sittings. */
export async function skeinsReadIn(db: Kysely<Database>, sittingIds: readonly string[]): Promise<string[]> {
  const { rows } = await sql<{ id: string }>`select distinct skein_id as id from reading
    where sitting_id = any(${[...sittingIds]}::uuid[])`.execute(db)
  return rows.map((row) => row.id)
}
