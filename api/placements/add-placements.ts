import type { Kysely } from 'kysely'
import type { NewPlacement } from '#api/contract/placement.ts'
import { type Adding, inItems, refuseFaults } from '#api/records/adding.ts'
import { refuseTwoLevels } from '#api/treatments/refuse-two-levels.ts'
import { type Added, addRows } from '#db/add-rows.ts'
import { refuseStrangers } from '#db/belonging.ts'
import { loseSkeinsOf } from '#db/losses.ts'
import type { Database } from '#db/tables.ts'

export type PlacementToAdd = Partial<NewPlacement> &
  Pick<NewPlacement, 'skeinId'> & { readonly vesselId: string }

/** Lays skeins into vessels of a trial or into shared ones. What lies in a lost vessel is lost. */
export async function addPlacements(
  tx: Kysely<Database>,
  trialId: string | null | undefined,
  placements: readonly PlacementToAdd[],
  { at = inItems, skeins }: Adding = {},
): Promise<Added<'placement'>> {
  refuseFaults(
    placements.flatMap(({ inAt, outAt }, index) =>
      inAt && outAt && Date.parse(outAt) < Date.parse(inAt)
        ? [{ pointer: `${at(index)}/outAt`, detail: 'It came out before it went in.' }]
        : [],
    ),
  )
  await refuseStrangers(
    tx,
    trialId ?? undefined,
    placements.flatMap((placement, index) => [
      { table: 'vessel' as const, id: placement.vesselId, pointer: `${at(index)}/vesselId` },
      { table: 'skein' as const, id: placement.skeinId, pointer: `${at(index)}/skeinId` },
    ]),
  )
  const rows = placements.map((placement) => ({ ...placement, covered: placement.covered ?? false }))
  const added = await addRows(tx, 'placement', rows, { at })
  await refuseTwoLevels(tx, { skeinIds: rows.map((row) => row.skeinId) })
  const lost = await loseSkeinsOf(tx, { vesselIds: [...new Set(rows.map((row) => row.vesselId))] })
  skeins?.push(...lost)
  return added
}
