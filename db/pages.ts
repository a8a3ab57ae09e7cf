import { type Kysely, type RawBuilder, sql } from 'kysely'
import type { Page } from './rows.ts'
import type { Database } from './tables.ts'

/** Where the rows of a noun stand, as `it`, and what makes them those of one trial, session or vessel. */
type Whole = { readonly from: RawBuilder<unknown>; readonly of: (id: string) => RawBuilder<unknown> }

const bySkeinOrVessel = (table: string): Whole => ({
  from: sql`${sql.table(table)} it`,
  of: (id) => sql`(it.skein_id in (select id from skein where trial_id = ${id}) or it.vessel_id in
    (select vessel.id from vessel join session on session.id = vessel.session_id where session.trial_id = ${id}))`,
})

const wholes = {
  'sessions of a trial': { from: sql`session it`, of: (id) => sql`it.trial_id = ${id}` },
  'shared sessions': { from: sql`session it`, of: () => sql`it.trial_id is null` },
  'vessels of a session': { from: sql`vessel it`, of: (id) => sql`it.session_id = ${id}` },
  'skeins of a trial': { from: sql`skein it`, of: (id) => sql`it.trial_id = ${id}` },
  'placements of a vessel': { from: sql`placement it`, of: (id) => sql`it.vessel_id = ${id}` },
  'exposures of a vessel': { from: sql`exposure it`, of: (id) => sql`it.vessel_id = ${id}` },
  'treatments of a trial': {
    from: sql`treatment it`,
    of: (id) => sql`it.factor_id in (select id from factor where trial_id = ${id})`,
  },
  'sittings of a trial': {
    from: sql`sitting it`,
    of: (id) => sql`(it.trial_id = ${id} or it.trial_id is null)`,
  },
  'readings of a trial': {
    from: sql`reading it`,
    of: (id) => sql`it.skein_id in (select id from skein where trial_id = ${id})`,
  },
  'outcomes of a trial': bySkeinOrVessel('outcome'),
  'rinses of a trial': bySkeinOrVessel('rinse'),
  'stamps of a trial': {
    from: sql`stamp it`,
    of: (id) => sql`it.session_id in (select id from session where trial_id = ${id})`,
  },
} as const satisfies Record<string, Whole>

export type WholeName = keyof typeof wholes

/** A page of the rows that belong to one thing, oldest first, by keyset: `after` is the id of the last row before. */
export async function pageOf<Row>(
  db: Kysely<Database>,
  name: WholeName,
  id: string,
  { limit, after }: Page,
): Promise<{ rows: Row[]; next: string | null }> {
  const { from, of }: Whole = wholes[name]
  const later = after
    ? sql`and (it.created_at, it.id) > (select it.created_at, it.id from ${from} where it.id = ${after})`
    : sql``
  const { rows } = await sql<Row & { id: string }>`select it.* from ${from} where ${of(id)} ${later}
    order by it.created_at, it.id limit ${limit + 1}`.execute(db)
  return { rows: rows.slice(0, limit), next: rows.length > limit ? (rows[limit - 1]?.id ?? null) : null }
}
