import { type Kysely, sql } from 'kysely'
import { derivedOf } from '#api/readings/spots.ts'
import { groupBy } from '#api/science/group-by.ts'
import { changeMeans, spotsAfter } from '#db/results.ts'
import type { Database } from '#db/tables.ts'
import { deriveResults } from './derive-results.ts'

const atOnce = 5000

/**
 * Works out anew everything that is derived from the measured rows: the means of readings, the changes, the rows that
 * findings read. It gives the same rows as the writes did. One transaction for each trial.
 */
export async function rebuildResults(
  db: Kysely<Database>,
): Promise<{ readonly trials: number; readonly skeins: number; readonly readings: number }> {
  const readings = await rebuildMeans(db)
  const { rows: skeins } = await sql<{
    id: string
    trialId: string | null
  }>`select id, trial_id from skein`.execute(db)
  const byTrial = groupBy(skeins, (skein) => skein.trialId)
  for (const ofTrial of byTrial.values()) {
    const ids = ofTrial.map((skein) => skein.id)
    await db.transaction().execute((tx) => deriveResults(tx, ids))
  }
  return { trials: [...byTrial.keys()].filter((id) => id !== null).length, skeins: skeins.length, readings }
}

async function rebuildMeans(db: Kysely<Database>): Promise<number> {
  let count = 0
  let after = '00000000-0000-0000-0000-000000000000'
  for (;;) {
    const page = await spotsAfter(db, after, atOnce)
    const last = page.at(-1)
    if (!last) return count
    await changeMeans(
      db,
      page.map(({ id, spots }) => ({ id, ...derivedOf(spots) })),
    )
    count += page.length
    after = last.id
  }
}
