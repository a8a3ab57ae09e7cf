import type { Kysely } from 'kysely'
import type { Finding } from '#api/contract/finding.ts'
import { Problem } from '#api/contract/problem.ts'
import type { WithinLevel } from '#api/contract/within-level.ts'
import { inTransaction } from '#db/in-transaction.ts'
import type { Database } from '#db/tables.ts'
import { holdTrial } from '#db/trials.ts'
import { type VerdictRow, verdictOf } from '#db/verdicts.ts'
import { findingOf } from './find.ts'

/**
 * Records the verdict as it stands: of all parts together, or of one of them. It is kept for good and
 * counted as a look: the same look at the same part is recorded once, and recording it again gives back what was kept.
 */
export async function declareVerdict(
  db: Kysely<Database>,
  trialId: string,
  { within }: WithinLevel = {},
): Promise<{ row: VerdictRow; made: boolean }> {
  return inTransaction(db, async (tx) => {
    await holdTrial(tx, trialId)
    const finding = await findingOf(tx, trialId, { within, at: '#/within', alone: true })
    const { verdict, rule } = finding
    if (!verdict || !rule) throw new Problem('at-fault', finding.waitsFor ?? 'There is no verdict yet.')
    const refused = refusedToRecord(finding)
    if (refused) throw new Problem('at-fault', refused.says, [{ pointer: '#', detail: refused.detail }])
    const stratum = within ?? ''
    const same = await verdictOf(tx, { trialId, look: verdict.look, stratum })
    if (same) return { row: same, made: false }
    const row = await tx
      .insertInto('verdict')
      .values({
        trialId,
        ruleEdition: rule.edition,
        look: verdict.look,
        withinLevelId: oneLevel(stratum),
        stratum,
        sessionsN: verdict.sessionsIn,
        body: JSON.stringify(finding),
      })
      .returningAll()
      .executeTakeFirstOrThrow()
    return { row, made: true }
  })
}

const oneLevel = (stratum: string) => (stratum === '' || stratum.includes('+') ? null : stratum)

/** Why something that ends a trial is not to be had yet. */
export type Refusal = {
  /** What it waits for, as a button says it: “a locked rule”. */
  readonly waitsFor: string
  readonly says: string
  readonly detail: string
}

/** Why the verdict of a finding cannot be recorded yet; undefined where it can. */
export function refusedToRecord({ verdict, rule, waitsFor }: Finding): Refusal | undefined {
  if (!verdict || !rule) {
    const says = waitsFor ?? 'There is no verdict yet.'
    return { waitsFor: 'a verdict', says, detail: says }
  }
  if (rule.lockedAt === null)
    return {
      waitsFor: 'a locked rule',
      says: 'No rule was locked: this is not a claim. Lock the rule first.',
      detail: 'Lock the rule, then record the verdict.',
    }
  if (verdict.sessionsIn < verdict.sessionsPlanned)
    return {
      waitsFor: 'the planned sessions',
      says: 'The verdict is recorded when the planned sessions are in.',
      detail: `${verdict.sessionsIn} of ${verdict.sessionsPlanned} sessions.`,
    }
  return undefined
}
