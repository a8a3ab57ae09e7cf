import { type Selectable, sql } from 'kysely'
import type { SkeinTable } from './tables.ts'

export type SkeinRow = Selectable<SkeinTable>
/** A skein that changed along with something else: as it was and as it is. */
export type SkeinChange = { readonly before: SkeinRow; readonly after: SkeinRow }

/** What an update of the status of skeins changes, as it was: for `returning skein.*, …`, where `old` is the row before. */
export const was = sql`jsonb_build_object('status', old.status, 'lostReason', old.lost_reason, 'version', old.version) as was`
export type Was = { readonly was: Pick<SkeinRow, 'status' | 'lostReason' | 'version'> }

export function skeinChangeIn({ was, ...after }: SkeinRow & Was): SkeinChange {
  return { before: { ...after, ...was }, after }
}
