import type { Kysely, Selectable } from 'kysely'
import type { Database, FactorTable, LevelTable, RuleTable, TrialTable } from './tables.ts'

export type TrialRow = Selectable<TrialTable>
export type FactorRow = Selectable<FactorTable>
export type LevelRow = Selectable<LevelTable>
export type RuleRow = Selectable<RuleTable>
export type FactorWithLevels = FactorRow & { readonly levels: readonly LevelRow[] }

/** The factors of a trial with their levels, least first. */
export async function factorsOf(db: Kysely<Database>, trialId: string): Promise<FactorWithLevels[]> {
  const factors = await db
    .selectFrom('factor')
    .selectAll()
    .where('trialId', '=', trialId)
    .orderBy('createdAt')
    .orderBy('id')
    .execute()
  if (factors.length === 0) return []
  const levels = await db
    .selectFrom('level')
    .selectAll()
    .where(
      'factorId',
      'in',
      factors.map((factor) => factor.id),
    )
    .orderBy('position')
    .execute()
  return factors.map((factor) => ({
    ...factor,
    levels: levels.filter((level) => level.factorId === factor.id),
  }))
}

/** Every edition of the rule, oldest first. */
export async function rulesOf(db: Kysely<Database>, trialId: string): Promise<RuleRow[]> {
  return db.selectFrom('rule').selectAll().where('trialId', '=', trialId).orderBy('edition').execute()
}

/** The edition that judges: the newest one that is locked, else the newest draft. */
export function ruleInForce(rules: readonly RuleRow[]): RuleRow | undefined {
  return rules.findLast((rule) => rule.lockedAt !== null) ?? rules.at(-1)
}

/** Holds the trial while an edition of its rule is written, so that two writers do not get the same number. */
export async function holdTrial(db: Kysely<Database>, trialId: string): Promise<void> {
  await db.selectFrom('trial').select('id').where('id', '=', trialId).forUpdate().execute()
}

/** Whether anything was measured in a trial: then it is archived, not deleted. */
export async function isMeasured(db: Kysely<Database>, trialId: string): Promise<boolean> {
  const reading = db
    .selectFrom('reading')
    .innerJoin('skein', 'skein.id', 'reading.skeinId')
    .select('reading.id')
    .where('skein.trialId', '=', trialId)
  const outcome = db
    .selectFrom('outcome')
    .leftJoin('skein', 'skein.id', 'outcome.skeinId')
    .leftJoin('vessel', 'vessel.id', 'outcome.vesselId')
    .leftJoin('session', 'session.id', 'vessel.sessionId')
    .select('outcome.id')
    .where((is) => is.or([is('skein.trialId', '=', trialId), is('session.trialId', '=', trialId)]))
  const { measured } = await db
    .selectNoFrom((is) => is.or([is.exists(reading), is.exists(outcome)]).as('measured'))
    .executeTakeFirstOrThrow()
  return Boolean(measured)
}
