import type { Kysely } from 'kysely'
import type { NewRinse } from '#api/contract/rinse.ts'
import { type Adding, inItems, refuseFaults } from '#api/records/adding.ts'
import { correctionOf, supersede } from '#api/records/supersede.ts'
import { type Added, addRows } from '#db/add-rows.ts'
import { refuseStrangers } from '#db/belonging.ts'
import type { Database } from '#db/tables.ts'

export type RinseToAdd = Partial<NewRinse> & Pick<NewRinse, 'number'>

/** Writes rinses of skeins and vessels of a trial. */
export async function addRinses(
  tx: Kysely<Database>,
  trialId: string,
  rinses: readonly RinseToAdd[],
  { at = inItems }: Adding = {},
): Promise<Added<'rinse'>> {
  refuseFaults(
    rinses.flatMap(({ skeinId, vesselId }, index) =>
      Boolean(skeinId) === Boolean(vesselId)
        ? [{ pointer: at(index), detail: 'A rinse is of one thing: name a skein or a vessel.' }]
        : [],
    ),
  )
  await refuseStrangers(
    tx,
    trialId,
    rinses.flatMap((rinse, index) => [
      { table: 'skein' as const, id: rinse.skeinId, pointer: `${at(index)}/skeinId` },
      { table: 'vessel' as const, id: rinse.vesselId, pointer: `${at(index)}/vesselId` },
    ]),
  )
  const rows = rinses.map(correctionOf)
  await supersede(tx, 'rinse', rows, { at })
  return addRows(tx, 'rinse', rows, { at })
}
