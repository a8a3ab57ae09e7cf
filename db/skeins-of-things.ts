import type { Kysely } from 'kysely'
import { skeinsIn } from './losses.ts'
import type { Database } from './tables.ts'

/** The skeins that these rows speak of: their own, or those in their vessels. */
export async function skeinsOfThings(
  db: Kysely<Database>,
  rows: readonly { readonly skeinId: string | null; readonly vesselId: string | null }[],
): Promise<string[]> {
  const vesselIds = rows.flatMap((row) => row.vesselId ?? [])
  const inVessels = vesselIds.length > 0 ? await skeinsIn(db, { vesselIds: [...new Set(vesselIds)] }) : []
  return [...new Set([...rows.flatMap((row) => row.skeinId ?? []), ...inVessels])]
}
