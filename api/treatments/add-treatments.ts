import { type Kysely, sql } from 'kysely'
import type { Fault } from '#api/contract/problem.ts'
import type { NewTreatment } from '#api/contract/treatment.ts'
import { type Adding, inItems, refuseFaults } from '#api/records/adding.ts'
import { type Added, addRows } from '#db/add-rows.ts'
import { refuseStrangers } from '#db/belonging.ts'
import { skeinsIn } from '#db/losses.ts'
import type { Database } from '#db/tables.ts'
import { refuseTwoLevels } from './refuse-two-levels.ts'

export type TreatmentToAdd = Partial<NewTreatment> & Pick<NewTreatment, 'levelId'>

/** Gives levels to sessions, vessels or skeins, by plan. Two levels of one factor at one place are refused. */
export async function addTreatments(
  tx: Kysely<Database>,
  trialId: string,
  treatments: readonly TreatmentToAdd[],
  { at = inItems }: Adding = {},
): Promise<Added<'treatment'>> {
  const faults: Fault[] = []
  for (const [index, { sessionId, vesselId, skeinId }] of treatments.entries()) {
    if ([sessionId, vesselId, skeinId].filter(Boolean).length !== 1)
      faults.push({
        pointer: at(index),
        detail: 'A level is given to one thing: name a session, a vessel or a skein.',
      })
  }
  refuseFaults(faults)
  await refuseStrangers(
    tx,
    trialId,
    treatments.flatMap((it, index) => [
      { table: 'level' as const, id: it.levelId, pointer: `${at(index)}/levelId` },
      { table: 'session' as const, id: it.sessionId, pointer: `${at(index)}/sessionId` },
      { table: 'vessel' as const, id: it.vesselId, pointer: `${at(index)}/vesselId` },
      { table: 'skein' as const, id: it.skeinId, pointer: `${at(index)}/skeinId` },
    ]),
  )
  const factors = await factorsOfLevels(
    tx,
    treatments.map((it) => it.levelId),
  )
  const rows = treatments.map((it) => ({ ...it, factorId: factors.get(it.levelId) ?? '' }))
  await refuseOtherLevels(tx, rows, at)
  const added = await addRows(tx, 'treatment', rows, { at })
  const given = {
    vesselIds: rows.flatMap((row) => row.vesselId ?? []),
    sessionIds: rows.flatMap((row) => row.sessionId ?? []),
  }
  await refuseTwoLevels(tx, { skeinIds: await skeinsIn(tx, given) })
  return added
}

type Given = TreatmentToAdd & { readonly factorId: string }
const placeOf = (it: Given) => `${it.factorId} ${it.sessionId ?? it.vesselId ?? it.skeinId ?? ''}`

async function refuseOtherLevels(
  tx: Kysely<Database>,
  rows: readonly Given[],
  at: (index: number) => string,
) {
  const factorIds = [...new Set(rows.map((row) => row.factorId))]
  const { rows: before } = await sql<Given>`select id, factor_id, level_id, session_id, vessel_id, skein_id
    from treatment where factor_id = any(${factorIds}::uuid[])`.execute(tx)
  const levels = new Map(before.map((it) => [placeOf(it), it.levelId]))
  const faults: Fault[] = []
  for (const [index, row] of rows.entries()) {
    const level = levels.get(placeOf(row))
    if (level !== undefined && level !== row.levelId)
      faults.push({
        pointer: `${at(index)}/levelId`,
        detail: 'This already has another level of the same factor.',
      })
    levels.set(placeOf(row), row.levelId)
  }
  refuseFaults(faults, 'One place has one level of a factor.')
}

async function factorsOfLevels(tx: Kysely<Database>, levelIds: readonly string[]) {
  const { rows } = await sql<{ id: string; factorId: string }>`select id, factor_id from level
    where id = any(${[...new Set(levelIds)]}::uuid[])`.execute(tx)
  return new Map(rows.map((row) => [row.id, row.factorId]))
}
