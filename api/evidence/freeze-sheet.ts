import type { Kysely } from 'kysely'
import type { FrozenBody } from '#api/contract/evidence.ts'
import type { Finding } from '#api/contract/finding.ts'
import { Problem } from '#api/contract/problem.ts'
import type { WithinLevel } from '#api/contract/within-level.ts'
import type { Refusal } from '#api/findings/declare-verdict.ts'
import { findIn, findParts } from '#api/findings/find.ts'
import { inTransaction } from '#db/in-transaction.ts'
import { type SheetRow, sheetsOf } from '#db/sheets.ts'
import type { Database } from '#db/tables.ts'
import { trialRecord } from '#db/trial-record.ts'
import { holdTrial } from '#db/trials.ts'
import { type VerdictRow, verdictOf } from '#db/verdicts.ts'
import { checksumOf } from './checksum.ts'
import { sheetOf } from './sheet-of-record.ts'

/**
 * Publishes the sheet of a trial as it stands, or of one part of it: from its recorded verdict, and once. As long as
 * nothing has changed, publishing it again gives back what was published.
 */
export async function freezeSheet(
  db: Kysely<Database>,
  trialId: string,
  { within }: WithinLevel = {},
): Promise<{ row: SheetRow; made: boolean }> {
  return inTransaction(db, async (tx) => {
    await holdTrial(tx, trialId)
    const record = await trialRecord(tx, trialId)
    const finding = findIn(record, { within, at: '#/within', alone: true })
    const { verdict } = finding
    const recorded = verdict
      ? await verdictOf(tx, { trialId, look: verdict.look, stratum: within ?? '' })
      : undefined
    const refused = refusedToPublish(finding, recorded)
    if (refused) throw new Problem('at-fault', refused.says, [{ pointer: '#', detail: refused.detail }])
    const parts = findParts(record, finding, { within })
    const body: FrozenBody = {
      sheet: sheetOf(record, finding, parts),
      finding,
      ...(parts.length > 1 ? { parts } : {}),
    }
    const text = JSON.stringify(body)
    const sha256 = checksumOf(JSON.parse(text))
    const same = (await sheetsOf(tx, trialId)).find((it) => it.sha256 === sha256)
    if (same) return { row: same, made: false }
    const row = await tx
      .insertInto('evidenceSheet')
      .values({
        trialIds: [trialId],
        body: text,
        sha256,
        step: finding.evidenceStep.step,
      })
      .returningAll()
      .executeTakeFirstOrThrow()
    return { row, made: true }
  })
}

/** Why the sheet of a finding cannot be published yet; undefined where it can: a sheet is made from the recorded verdict. */
export function refusedToPublish(finding: Finding, recorded: VerdictRow | undefined): Refusal | undefined {
  const { verdict, rule, waitsFor } = finding
  if (!verdict) {
    const says = `A sheet is made from a verdict. ${waitsFor ?? ''}`.trim()
    return { waitsFor: 'a verdict', says, detail: says }
  }
  if (rule?.lockedAt == null)
    return {
      waitsFor: 'a locked rule',
      says: 'No rule was locked: this is not a claim. Lock the rule first.',
      detail: 'Lock the rule, then record the verdict.',
    }
  if (!recorded)
    return {
      waitsFor: 'the recorded verdict',
      says: 'A sheet is published from a recorded verdict. Record the verdict first.',
      detail: 'This verdict is not recorded yet.',
    }
  const { answer, headline } = recorded.body.verdict ?? {}
  if (answer === verdict.answer && headline === verdict.headline) return undefined
  return {
    waitsFor: 'a new edition of the rule',
    says: `Since the verdict was recorded the results have changed. Recorded: “${headline}” Today: “${verdict.headline}”`,
    detail: 'Write a new edition of the rule, and record its verdict.',
  }
}
