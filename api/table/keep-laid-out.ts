import type { Kysely } from 'kysely'
import { placements } from '#api/placements/placements.ts'
import { type Journalled, keepAdded, keepChanged, keepSkeins } from '#api/records/journal.ts'
import type { Said } from '#api/records/said.ts'
import { sessions } from '#api/sessions/sessions.ts'
import { sittings } from '#api/sittings/sittings.ts'
import { skeins } from '#api/skeins/skeins.ts'
import { treatments } from '#api/treatments/treatments.ts'
import { vessels } from '#api/vessels/vessels.ts'
import type { WrittenOtherwise } from '#db/give-otherwise.ts'
import { type PlainTable, rowsUnder } from '#db/rows.ts'
import type { SkeinChange } from '#db/skein-change.ts'
import type { Database } from '#db/tables.ts'
import type { LaidOut } from './laid-out.ts'

/** What a table changed of the records that were there: pieces that were done or lost, levels that differed from the plan. */
export type Followed = { readonly fated: readonly SkeinChange[]; readonly otherwise: WrittenOtherwise }

/**
 * Keeps in the journal what a table added to a trial that has readings already. What hangs on something that came with
 * it (a vessel of a new session, a placement in a new vessel) comes and goes with that, and has no row of its own.
 */
export async function keepLaidOut(
  tx: Kysely<Database>,
  out: LaidOut,
  { fated, otherwise }: Followed,
  said: Said,
): Promise<void> {
  const news = new Set([...out.sessions, ...out.vessels, ...out.skeins].map((it) => it.id))
  const isNew = (id: string | null | undefined) => id != null && news.has(id)
  const keep = async <T extends PlainTable>(
    noun: Journalled<T>,
    rows: readonly { readonly id: string }[],
  ) => {
    const ids = rows.map((row) => row.id)
    for (let from = 0; from < ids.length; from += atOnce) {
      const some = ids.slice(from, from + atOnce)
      const added = { rows: await rowsUnder(tx, noun.table, some), madeIds: new Set(some) }
      await keepAdded(tx, noun, added, { said })
    }
  }
  await keep(sessions, out.sessions)
  await keep(
    vessels,
    out.vessels.filter((it) => !isNew(it.sessionId)),
  )
  await keep(skeins, out.skeins)
  await keep(
    placements,
    out.placements.filter((it) => !isNew(it.skeinId) && !isNew(it.vesselId)),
  )
  await keep(
    treatments,
    out.treatments.filter((it) => !isNew(it.vesselId) && !isNew(it.skeinId)),
  )
  await keep(sittings, out.sittings)
  await keepSkeins(tx, fated, said)
  await keep(treatments, otherwise.added)
  for (const [before, after] of otherwise.changed) {
    const touched = await treatments.touches(tx, [after])
    await keepChanged(tx, treatments, [before, after], { said, touched })
  }
}

const atOnce = 2000
