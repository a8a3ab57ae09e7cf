import { type Kysely, sql } from 'kysely'
import type { Database } from './tables.ts'

/**
 * Makes the skeins of lost vessels lost, with the vessel's reason: those that lay in it, and the parts that were cut
 * from them afterwards. What was cut off before is not touched, nor what was lost already.
 *
 * @returns the ids of the skeins that are lost now and were not before
 */
export async function loseSkeinsOf(
  tx: Kysely<Database>,
  { vesselIds }: { readonly vesselIds: readonly string[] },
): Promise<string[]> {
  const { rows } = await sql<{ id: string }>`
    with recursive gone as (
      select p.skein_id as id, p.in_at, v.label || ': ' || v.lost_reason as reason
      from placement p join vessel v on v.id = p.vessel_id
      where v.status = 'lost' and v.id = any(${[...vesselIds]}::uuid[])
      union
      select skein.id, gone.in_at, gone.reason from skein join gone on skein.cut_from_id = gone.id
      where skein.cut_at is null or gone.in_at is null or skein.cut_at > gone.in_at
    )
    update skein set status = 'lost', lost_reason = gone.reason, version = version + 1
    from (select distinct on (id) id, reason from gone order by id, reason) gone
    where skein.id = gone.id and skein.status <> 'lost' returning skein.id`.execute(tx)
  return rows.map((row) => row.id)
}

/** Takes back the losses that came from this vessel alone, now that it is not lost after all. */
export async function findSkeinsOf(
  tx: Kysely<Database>,
  { label, lostReason, status }: { label: string; lostReason: string; status: 'planned' | 'done' },
  vesselId: string,
): Promise<void> {
  await sql`with recursive back as (
      select skein_id as id from placement where vessel_id = ${vesselId}
      union
      select skein.id from skein join back on skein.cut_from_id = back.id
    )
    update skein set status = ${status}, lost_reason = null, version = version + 1
    from back where skein.id = back.id and skein.status = 'lost' and lost_reason = ${`${label}: ${lostReason}`}`.execute(
    tx,
  )
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
