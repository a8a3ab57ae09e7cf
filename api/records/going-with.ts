import type { Kysely } from 'kysely'
import { placement } from '#api/contract/placement.ts'
import { treatment } from '#api/contract/treatment.ts'
import { vessel } from '#api/contract/vessel.ts'
import { hangingOn } from '#db/hanging-on.ts'
import type { Database } from '#db/tables.ts'
import { presentPlain } from './present.ts'

const presentPlacement = presentPlain(placement)
const presentTreatment = presentPlain(treatment)
const presentVessel = presentPlain(vessel)

type Going = {
  readonly noun: string
  readonly recordId: string
  readonly before: object
  readonly skeinIds: readonly string[]
}

/** The records that go when another is removed, as they leave: treatments and placements before their vessels. */
export async function goingWith(tx: Kysely<Database>, table: string, id: string): Promise<Going[]> {
  const { treatments, placements, vessels } = await hangingOn(tx, table, id)
  const lyingIn = (vesselId: string | null) =>
    placements.filter((it) => it.vesselId === vesselId).map((it) => it.skeinId)
  return [
    ...treatments.map((row) => ({
      noun: 'treatment',
      recordId: row.id,
      before: presentTreatment(row),
      skeinIds: row.skeinId ? [row.skeinId] : lyingIn(row.vesselId),
    })),
    ...placements.map((row) => ({
      noun: 'placement',
      recordId: row.id,
      before: presentPlacement(row),
      skeinIds: [row.skeinId],
    })),
    ...vessels.map((row) => ({
      noun: 'vessel',
      recordId: row.id,
      before: presentVessel(row),
      skeinIds: lyingIn(row.id),
    })),
  ]
}
