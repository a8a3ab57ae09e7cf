import { type Kysely, sql } from 'kysely'
import { Problem } from '#api/contract/problem.ts'
import type { Database } from './tables.ts'

/** Refuses to remove what was measured, with what hangs on it: it is marked lost instead, with a reason. */
export async function refuseIfMeasured(
  db: Kysely<Database>,
  what: { readonly sessionId?: string; readonly vesselId?: string; readonly skeinId?: string },
  sentence: string,
): Promise<void> {
  const vessels = sql`select id from vessel where id = ${what.vesselId ?? null}::uuid
    or session_id = ${what.sessionId ?? null}::uuid`
  const skein = sql`${what.skeinId ?? null}::uuid`
  const { rows } = await sql<{ measured: boolean }>`select
      exists (select from reading where skein_id = ${skein})
      or exists (select from outcome where skein_id = ${skein} or vessel_id in (${vessels}))
      or exists (select from rinse where skein_id = ${skein} or vessel_id in (${vessels}))
      or exists (select from exposure where vessel_id in (${vessels}))
      or exists (select from stamp where skein_id = ${skein} or vessel_id in (${vessels})
        or session_id = ${what.sessionId ?? null}::uuid) as measured`.execute(db)
  if (rows[0]?.measured) throw new Problem('still-in-use', sentence)
}
