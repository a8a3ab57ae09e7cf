import type { Kysely } from 'kysely'
import type { NewStamp } from '#api/contract/stamp.ts'
import { type Adding, inItems } from '#api/records/adding.ts'
import { correctionOf, supersede } from '#api/records/supersede.ts'
import { type Added, addRows } from '#db/add-rows.ts'
import { refuseStrangers } from '#db/belonging.ts'
import type { Database } from '#db/tables.ts'

export type StampToAdd = Partial<NewStamp> & Pick<NewStamp, 'sessionId' | 'kind' | 'at'>

/** Writes what happened at the stove, and when. */
export async function addStamps(
  tx: Kysely<Database>,
  trialId: string,
  stamps: readonly StampToAdd[],
  { at = inItems }: Adding = {},
): Promise<Added<'stamp'>> {
  await refuseStrangers(
    tx,
    trialId,
    stamps.flatMap((stamp, index) => [
      { table: 'session' as const, id: stamp.sessionId, pointer: `${at(index)}/sessionId` },
      { table: 'vessel' as const, id: stamp.vesselId, pointer: `${at(index)}/vesselId` },
      { table: 'skein' as const, id: stamp.skeinId, pointer: `${at(index)}/skeinId` },
      { table: 'stock' as const, id: stamp.stockId, pointer: `${at(index)}/stockId` },
    ]),
  )
  const rows = stamps.map(correctionOf)
  await supersede(tx, 'stamp', rows, { at })
  return addRows(tx, 'stamp', rows, { at })
}
