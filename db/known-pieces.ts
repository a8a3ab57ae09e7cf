import { type Kysely, sql } from 'kysely'
import { type SkeinChange, type SkeinRow, skeinChangeIn, type Was, was } from './skein-change.ts'
import type { Database } from './tables.ts'

/** A piece that a trial has already, of which a table speaks by its code. */
export type KnownPiece = {
  readonly code: string
  readonly measured: boolean
  /** The level of each factor: its own, else that of the vessel, else that of the session it lay in. */
  readonly given: readonly { readonly factor: string; readonly label: string }[]
}

/** What is known of the pieces of a trial under these codes. */
export async function knownPieces(
  db: Kysely<Database>,
  trialId: string,
  codes: readonly string[],
): Promise<ReadonlyMap<string, KnownPiece>> {
  const { rows } = await sql<KnownPiece>`
    with mine as (
      select id, code from skein where trial_id = ${trialId} and code = any(${[...codes]}::text[])
    ), things as (
      select id as skein_id, id as thing_id, 1 as nearness from mine
      union select p.skein_id, p.vessel_id, 2 from placement p join mine on mine.id = p.skein_id
      union select p.skein_id, v.session_id, 3 from placement p join mine on mine.id = p.skein_id
        join vessel v on v.id = p.vessel_id
    ), nearest as (
      select distinct on (things.skein_id, f.id) things.skein_id, f.key, l.label
      from treatment t join factor f on f.id = t.factor_id and f.trial_id = ${trialId}
        join level l on l.id = t.level_id
        join things on things.thing_id = coalesce(t.skein_id, t.vessel_id, t.session_id)
      order by things.skein_id, f.id, things.nearness
    ), given as (
      select skein_id, jsonb_agg(jsonb_build_object('factor', key, 'label', label)) as levels
      from nearest group by skein_id
    )
    select mine.code, coalesce(given.levels, '[]') as given,
      exists (select from reading r where r.skein_id = mine.id)
        or exists (select from outcome o where o.skein_id = mine.id) as measured
    from mine left join given on given.skein_id = mine.id`.execute(db)
  return new Map(rows.map((row) => [row.code, row]))
}

/** Pieces that were planned are done, or lost with a reason, once a table says so. */
export async function tellFates(
  tx: Kysely<Database>,
  fates: readonly { readonly id: string; readonly lostReason: string | null }[],
): Promise<SkeinChange[]> {
  if (fates.length === 0) return []
  const body = JSON.stringify(fates.map(({ id, lostReason }) => ({ id, lost_reason: lostReason })))
  const { rows } = await sql<SkeinRow & Was>`update skein
    set status = case when it.lost_reason is null then 'done' else 'lost' end,
      lost_reason = it.lost_reason, version = skein.version + 1
    from jsonb_to_recordset(${body}::jsonb) as it(id uuid, lost_reason text) join skein old on old.id = it.id
    where skein.id = it.id and skein.status = 'planned' returning skein.*, ${was}`.execute(tx)
  return rows.map(skeinChangeIn)
}
