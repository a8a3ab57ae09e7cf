import type { Kysely } from 'kysely'
import type { NewVessel } from '#api/contract/vessel.ts'
import { type Adding, faultOfLoss, inItems, refuseFaults } from '#api/records/adding.ts'
import { readConditions } from '#api/records/read-conditions.ts'
import { type Added, addRows } from '#db/add-rows.ts'
import { refuseStrangers } from '#db/belonging.ts'
import type { Database } from '#db/tables.ts'

export type VesselToAdd = Partial<NewVessel> &
  Pick<NewVessel, 'stage' | 'kind' | 'label'> & { readonly sessionId: string }

/** Writes vessels into sessions of a trial, or into shared ones. */
export async function addVessels(
  tx: Kysely<Database>,
  trialId: string | null | undefined,
  vessels: readonly VesselToAdd[],
  { at = inItems, doubts }: Adding = {},
): Promise<Added<'vessel'>> {
  refuseFaults(vessels.flatMap((vessel, index) => faultOfLoss(vessel, at(index))))
  await refuseStrangers(
    tx,
    trialId ?? undefined,
    vessels.flatMap((vessel, index) => [
      { table: 'session' as const, id: vessel.sessionId, pointer: `${at(index)}/sessionId` },
      { table: 'recipe' as const, id: vessel.recipeId, pointer: `${at(index)}/recipeId` },
    ]),
  )
  const conditions = await readConditions(tx, trialId, vessels, { at, doubts })
  const rows = vessels.map((vessel, index) => ({
    ...vessel,
    conditions: conditions[index] ?? {},
    assumed: vessel.assumed ?? false,
    status: vessel.status ?? ('planned' as const),
  }))
  return addRows(tx, 'vessel', rows, { at })
}
