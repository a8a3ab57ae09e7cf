import type { Kysely } from 'kysely'
import type { NewSitting } from '#api/contract/sitting.ts'
import { type Adding, inItems } from '#api/records/adding.ts'
import { type Added, addRows } from '#db/add-rows.ts'
import { refuseStrangers } from '#db/belonging.ts'
import type { Database } from '#db/tables.ts'

export type SittingToAdd = Partial<NewSitting> & Pick<NewSitting, 'method' | 'label'>

/** Writes sittings; `trialId` stands for those that name no trial of their own. */
export async function addSittings(
  tx: Kysely<Database>,
  trialId: string | null,
  sittings: readonly SittingToAdd[],
  { at = inItems }: Adding = {},
): Promise<Added<'sitting'>> {
  const rows = sittings.map((sitting) => ({ ...sitting, trialId: sitting.trialId ?? trialId }))
  await refuseStrangers(
    tx,
    undefined,
    rows.flatMap((row, index) => [
      { table: 'trial' as const, id: row.trialId, pointer: `${at(index)}/trialId` },
      { table: 'instrument' as const, id: row.instrumentId, pointer: `${at(index)}/instrumentId` },
    ]),
  )
  for (const owner of new Set(rows.map((row) => row.trialId))) {
    await refuseStrangers(
      tx,
      owner,
      rows.flatMap((row, index) =>
        row.trialId === owner
          ? [
              {
                table: 'skein' as const,
                id: row.inFrameStandardId,
                pointer: `${at(index)}/inFrameStandardId`,
              },
            ]
          : [],
      ),
    )
  }
  return addRows(tx, 'sitting', rows, { at })
}
