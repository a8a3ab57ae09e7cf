import { type Kysely, sql } from 'kysely'
import type { NewReading } from '#api/contract/reading.ts'
import { type Adding, inItems, refuseFaults } from '#api/records/adding.ts'
import { correctionOf, supersede } from '#api/records/supersede.ts'
import { wearsAt } from '#api/results/wears-at.ts'
import { type Added, addRows } from '#db/add-rows.ts'
import { refuseStrangers } from '#db/belonging.ts'
import type { Database } from '#db/tables.ts'
import { derivedOf, doubtsOfSpots } from './spots.ts'

export type ReadingToAdd = Partial<NewReading> & Pick<NewReading, 'skeinId' | 'sittingId' | 'spots'>

/**
 * Writes readings, however many, in a handful of statements. Their means are worked out here; changes and results
 * follow with `deriveResults`, in the same transaction.
 */
export async function addReadings(
  tx: Kysely<Database>,
  trialId: string,
  readings: readonly ReadingToAdd[],
  adding: Adding = {},
): Promise<Added<'reading'>> {
  const rows = await readingRows(tx, trialId, readings, adding)
  return addRows(tx, 'reading', rows, { at: adding.at ?? inItems, derived: ['wear', 'wearFrom', ...derived] })
}

/** Checks readings, marks what they correct, and gives their rows as they are to be written. */
export async function readingRows(
  tx: Kysely<Database>,
  trialId: string,
  readings: readonly ReadingToAdd[],
  { at = inItems, doubts }: Adding = {},
) {
  await refuseStrangers(
    tx,
    trialId,
    readings.flatMap((reading, index) => [
      { table: 'skein' as const, id: reading.skeinId, pointer: `${at(index)}/skeinId` },
      { table: 'sitting' as const, id: reading.sittingId, pointer: `${at(index)}/sittingId` },
    ]),
  )
  const moments = await momentsOf(
    tx,
    readings.map((it) => it.sittingId),
  )
  const { kept, faults } = await wearsAt(
    tx,
    readings.map(({ skeinId, sittingId, wear, takenAt }) => ({
      skeinId,
      wear,
      at: takenAt ? new Date(takenAt) : moments.get(sittingId),
    })),
    at,
  )
  refuseFaults(faults)
  const rows = readings.map((reading, index) => {
    doubts?.push(...doubtsOfSpots(reading.spots, at(index)))
    const { spots, ...rest } = correctionOf(reading)
    return {
      ...rest,
      ...kept[index],
      placing: reading.placing ?? 1,
      wet: reading.wet ?? false,
      spots,
      ...derivedOf(spots),
    }
  })
  await supersede(tx, 'reading', rows, { at })
  return rows
}

const derived = ['meanL', 'meanA', 'meanB', 'spotsN', 'mcdm', 'spread', 'clipped']

async function momentsOf(tx: Kysely<Database>, sittingIds: readonly string[]): Promise<Map<string, Date>> {
  const { rows } = await sql<{ id: string; at: Date }>`select id, at from sitting
    where at is not null and id = any(${[...new Set(sittingIds)]}::uuid[])`.execute(tx)
  return new Map(rows.map((row) => [row.id, row.at]))
}
