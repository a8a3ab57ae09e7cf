import type { Kysely } from 'kysely'
import type { Database } from './tables.ts'

/** Mean loss of each level in each session of earlier trials that varied the same thing. */
export type EarlierLoss = {
  readonly trialId: string
  readonly levelId: string
  readonly sessionId: string | null
  readonly isReference: boolean
  readonly value: number
}

/** Losses (ΔE00 after some wear) of other trials with a factor of this key, by level and session. */
export async function earlierLosses(
  db: Kysely<Database>,
  { key, exceptTrial }: { readonly key: string; readonly exceptTrial: string },
): Promise<EarlierLoss[]> {
  return db
    .selectFrom('factor')
    .innerJoin('level', 'level.factorId', 'factor.id')
    .innerJoin('treatment', 'treatment.levelId', 'level.id')
    .innerJoin('placement', 'placement.vesselId', 'treatment.vesselId')
    .innerJoin('result', 'result.skeinId', 'placement.skeinId')
    .select((is) => [
      'factor.trialId',
      'level.id as levelId',
      'result.sessionId',
      'level.isReference',
      is.fn.avg<number>('result.value').as('value'),
    ])
    .where('factor.key', '=', key)
    .where('factor.trialId', '!=', exceptTrial)
    .where('result.kind', '=', 'dE00')
    .where('result.wearKey', '!=', '')
    .groupBy(['factor.trialId', 'level.id', 'result.sessionId', 'level.isReference'])
    .execute()
}
