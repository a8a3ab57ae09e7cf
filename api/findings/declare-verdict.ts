import type { Kysely } from 'kysely'
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
    if (rule.lockedAt === null) {
      throw new Problem('at-fault', 'A verdict is declared under a locked rule.', [
        { pointer: '#', detail: 'Lock the rule first.' },
      ])
    }
    if (verdict.sessionsIn < verdict.sessionsPlanned) {
      throw new Problem('at-fault', 'The verdict comes when the planned sessions are in.', [
        { pointer: '#', detail: `${verdict.sessionsIn} of ${verdict.sessionsPlanned} sessions.` },
      ])
    }
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
