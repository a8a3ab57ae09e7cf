import type { Kysely } from 'kysely'
import { skeinsIn } from './losses.ts'
import type { Database } from './tables.ts'

/** What a row is of: a skein, a vessel or a whole session. */
type OfThing = {
  readonly skeinId: string | null
  readonly vesselId: string | null
  readonly sessionId?: string | null
}

/** The skeins that these rows speak of: their own, else those in their vessels, else those of their sessions. */
export async function skeinsOfThings(db: Kysely<Database>, rows: readonly OfThing[]): Promise<string[]> {
  const own = rows.flatMap((row) => row.skeinId ?? [])
  const vesselIds = [...new Set(rows.flatMap((row) => row.vesselId ?? []))]
  const whole = rows.filter((row) => row.skeinId === null && row.vesselId === null)
  const sessionIds = [...new Set(whole.flatMap((row) => row.sessionId ?? []))]
  const lying = vesselIds.length + sessionIds.length > 0 ? await skeinsIn(db, { vesselIds, sessionIds }) : []
  return [...new Set([...own, ...lying])]
}

/** Where it is found which trial such a row is of. */
export function thingOf({ skeinId, vesselId }: Pick<OfThing, 'skeinId' | 'vesselId'>) {
  return skeinId === null
    ? { table: 'vessel' as const, id: vesselId }
    : { table: 'skein' as const, id: skeinId }
}
