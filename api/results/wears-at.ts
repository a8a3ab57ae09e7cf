import { type Kysely, sql } from 'kysely'
import type { Fault } from '#api/contract/problem.ts'
import { wearInWords } from '#api/contract/wear.ts'
import { familiesOf, historiesOf } from '#db/histories.ts'
import type { Database, Wear } from '#db/tables.ts'
import { isSameWear, wearFromExposures } from './wear-from-exposures.ts'

/** Something that was read or graded of a skein, with the wear that was entered, if any, and when it was taken. */
export type Worn = {
  readonly skeinId: string
  readonly wear: Wear | undefined
  readonly at: Date | undefined
}
export type WearKept = { readonly wear: Wear; readonly wearFrom: 'exposures' | 'entered' }

/**
 * The wear of each: what was entered, else what the exposures come to (of today, where no moment was written down).
 * Both present and different is a fault with both values; so is a wear left out where an exposure has no end.
 */
export async function wearsAt(
  tx: Kysely<Database>,
  worn: readonly Worn[],
  at: (index: number) => string,
): Promise<{ kept: WearKept[]; faults: Fault[] }> {
  const exposed = await exposedOf(
    tx,
    worn.map((it) => it.skeinId),
  )
  const families = await familiesOf(tx, exposed)
  const histories = await historiesOf(
    tx,
    families.flatMap((family) => family.ids),
  )
  const faults: Fault[] = []
  const kept = worn.map((it, index): WearKept => {
    const pointer = `${at(index)}/wear`
    if (!histories.skeins.has(it.skeinId)) {
      return it.wear === undefined
        ? { wear: {}, wearFrom: 'exposures' }
        : { wear: it.wear, wearFrom: 'entered' }
    }
    const moment = it.at?.getTime() ?? Date.now()
    const seen = wearFromExposures(it.skeinId, moment, histories)
    if (it.wear === undefined) {
      if (seen.undated)
        faults.push({
          pointer,
          detail: 'An exposure of this skein has no dates, so its wear is not known. Enter the wear.',
        })
      return { wear: seen.wear, wearFrom: 'exposures' }
    }
    // Undated exposures, or a reading of no date, say nothing against what was entered.
    if (it.at !== undefined && seen.counted && !seen.undated && !isSameWear(it.wear, seen.wear)) {
      faults.push({
        pointer,
        detail: `Entered: ${wearInWords(it.wear)}. By its exposures: ${wearInWords(seen.wear)}. Which is right?`,
      })
    }
    return { wear: it.wear, wearFrom: 'entered' }
  })
  return { kept, faults }
}

/** Those of these skeins that have exposures at all, own or shared with what they were cut from. */
async function exposedOf(tx: Kysely<Database>, skeinIds: readonly string[]): Promise<string[]> {
  const { rows } = await sql<{ id: string }>`
    with recursive up as (
      select id as start, id, cut_from_id from skein where id = any(${[...new Set(skeinIds)]}::uuid[])
      union
      select up.start, skein.id, skein.cut_from_id from skein join up on skein.id = up.cut_from_id
    )
    select distinct up.start as id from up join placement p on p.skein_id = up.id
    join exposure e on e.vessel_id = p.vessel_id and not e.superseded`.execute(tx)
  return rows.map((row) => row.id)
}
