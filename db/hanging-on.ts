import { type Kysely, type Selectable, sql } from 'kysely'
import type { Database, PlacementTable, TreatmentTable, VesselTable } from './tables.ts'

/** What goes when a session, a vessel or a skein is removed: the rows that lie in it or were given to it. */
export type Hanging = {
  readonly treatments: readonly Selectable<TreatmentTable>[]
  readonly placements: readonly Selectable<PlacementTable>[]
  readonly vessels: readonly Selectable<VesselTable>[]
}

/** The rows that a removal of this session, vessel or skein takes along. */
export async function hangingOn(db: Kysely<Database>, table: string, id: string): Promise<Hanging> {
  const vessels =
    table === 'session' ? await db.selectFrom('vessel').selectAll().where('sessionId', '=', id).execute() : []
  const vesselIds = table === 'vessel' ? [id] : vessels.map((vessel) => vessel.id)
  const sessionId = table === 'session' ? id : null
  const skeinId = table === 'skein' ? id : null
  const { rows: placements } = await sql<Selectable<PlacementTable>>`select * from placement
    where vessel_id = any(${vesselIds}::uuid[]) or skein_id = ${skeinId}::uuid order by id`.execute(db)
  const { rows: treatments } = await sql<Selectable<TreatmentTable>>`select * from treatment
    where vessel_id = any(${vesselIds}::uuid[]) or skein_id = ${skeinId}::uuid
      or session_id = ${sessionId}::uuid order by id`.execute(db)
  return { treatments, placements, vessels }
}
