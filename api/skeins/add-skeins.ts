import type { Kysely } from 'kysely'
import type { Fault } from '#api/contract/problem.ts'
import type { NewSkein } from '#api/contract/skein.ts'
import { type Adding, faultOfLoss, inItems, refuseFaults } from '#api/records/adding.ts'
import { readConditions } from '#api/records/read-conditions.ts'
import { type Added, addRows } from '#db/add-rows.ts'
import { refuseStrangers } from '#db/belonging.ts'
import type { Database } from '#db/tables.ts'

export type SkeinToAdd = Partial<NewSkein> & Pick<NewSkein, 'code'>

/** Writes skeins of a trial, or shared ones (`trialId` null). A part may come together with what it was cut from. */
export async function addSkeins(
  tx: Kysely<Database>,
  trialId: string | null,
  skeins: readonly SkeinToAdd[],
  { at = inItems, doubts }: Adding = {},
): Promise<Added<'skein'>> {
  refuseFaults(skeins.flatMap((skein, index) => faultsOfSkein(skein, at(index))))
  refuseCircles(skeins, at)
  const sentHere = new Set(skeins.map((skein) => skein.id))
  await refuseStrangers(
    tx,
    trialId,
    skeins.flatMap((skein, index) => [
      {
        table: 'skein' as const,
        id: sentHere.has(skein.cutFromId ?? undefined) ? null : skein.cutFromId,
        pointer: `${at(index)}/cutFromId`,
      },
      { table: 'base' as const, id: skein.baseId, pointer: `${at(index)}/baseId` },
    ]),
  )
  const conditions = await readConditions(tx, trialId, skeins, { at, doubts })
  const rows = skeins.map((skein, index) => ({
    ...skein,
    trialId,
    role: skein.role ?? ('treated' as const),
    status: skein.status ?? ('planned' as const),
    conditions: conditions[index] ?? {},
  }))
  return addRows(tx, 'skein', rows, { at })
}

/** What does not go together in one skein. */
export function faultsOfSkein(skein: Partial<NewSkein>, pointer: string): Fault[] {
  const faults = faultOfLoss(skein, pointer)
  if (skein.blueWoolNumber != null && skein.role !== 'blue wool')
    faults.push({
      pointer: `${pointer}/blueWoolNumber`,
      detail: 'Only a skein of the role “blue wool” has a number.',
    })
  if (skein.cutAt && !skein.cutFromId)
    faults.push({ pointer: `${pointer}/cutFromId`, detail: 'Say what it was cut from.' })
  return faults
}

function refuseCircles(skeins: readonly SkeinToAdd[], at: (index: number) => string): void {
  const parents = new Map(skeins.map((skein) => [skein.id, skein.cutFromId ?? undefined]))
  for (const [index, skein] of skeins.entries()) {
    if (skein.id === undefined) continue
    const seen = new Set([skein.id])
    for (let parent = parents.get(skein.id); parent !== undefined; parent = parents.get(parent)) {
      if (seen.has(parent)) refuseFaults([circle(at(index))])
      seen.add(parent)
    }
  }
}

export const circle = (pointer: string): Fault => ({
  pointer: `${pointer}/cutFromId`,
  detail: 'A skein is not cut from itself or from one of its own parts.',
})
