import type { Kysely } from 'kysely'
import type { NewExposure } from '#api/contract/exposure.ts'
import { type Adding, inItems, refuseFaults } from '#api/records/adding.ts'
import { readConditions } from '#api/records/read-conditions.ts'
import { correctionOf, supersede } from '#api/records/supersede.ts'
import { type Added, addRows } from '#db/add-rows.ts'
import { refuseStrangers } from '#db/belonging.ts'
import type { Database } from '#db/tables.ts'

export type ExposureToAdd = Partial<NewExposure> &
  Pick<NewExposure, 'protocol'> & { readonly vesselId: string }

/** Writes washes, contacts, rubs and light exposures of vessels. */
export async function addExposures(
  tx: Kysely<Database>,
  trialId: string | null | undefined,
  exposures: readonly ExposureToAdd[],
  { at = inItems, doubts }: Adding = {},
): Promise<Added<'exposure'>> {
  refuseFaults(
    exposures.flatMap(({ startedAt, endedAt }, index) =>
      startedAt && endedAt && Date.parse(endedAt) < Date.parse(startedAt)
        ? [{ pointer: `${at(index)}/endedAt`, detail: 'It ended before it started.' }]
        : [],
    ),
  )
  await refuseStrangers(
    tx,
    trialId ?? undefined,
    exposures.map((exposure, index) => ({
      table: 'vessel' as const,
      id: exposure.vesselId,
      pointer: `${at(index)}/vesselId`,
    })),
  )
  const conditions = await readConditions(tx, trialId, exposures, { at, doubts })
  const rows = exposures.map((exposure, index) => ({
    ...correctionOf(exposure),
    due: exposure.due ?? [],
    conditions: conditions[index] ?? {},
  }))
  await supersede(tx, 'exposure', rows, { at })
  return addRows(tx, 'exposure', rows, { at })
}
