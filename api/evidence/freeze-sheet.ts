import { createHash } from 'node:crypto'
import type { Kysely } from 'kysely'
import type { EvidenceSheet, Sheet } from '#api/contract/evidence.ts'
import type { Finding } from '#api/contract/finding.ts'
import { Problem } from '#api/contract/problem.ts'
import type { WithinLevel } from '#api/contract/within-level.ts'
import { presentVerdict } from '#api/findings/declare-verdict.ts'
import { findIn, findParts } from '#api/findings/find.ts'
import { inTransaction } from '#db/in-transaction.ts'
import type { SheetRow } from '#db/sheets.ts'
import type { Database } from '#db/tables.ts'
import { trialRecord } from '#db/trial-record.ts'
import { holdTrial } from '#db/trials.ts'
import { verdictsOf } from '#db/verdicts.ts'
import { sheetOf } from './sheet-of-record.ts'

/** What is frozen: the words and the whole finding behind them; of more than one part, every part. Sheets of the first version have no parts. */
export type FrozenBody = {
  readonly sheet: Sheet
  readonly finding: Finding
  readonly parts?: readonly Finding[]
}

/**
 * Freezes the sheet of a trial as it stands, of one level of the other factor where there is one. A sheet is made from a
 * verdict.
 */
export async function freezeSheet(
  db: Kysely<Database>,
  trialId: string,
  { within }: WithinLevel = {},
): Promise<SheetRow> {
  return inTransaction(db, async (tx) => {
    await holdTrial(tx, trialId)
    const record = await trialRecord(tx, trialId)
    const finding = findIn(record, { within, at: '#/within', alone: true })
    const { verdict, rule } = finding
    if (!verdict)
      throw new Problem('at-fault', `A sheet is made from a verdict. ${finding.waitsFor ?? ''}`.trim())
    if (rule?.lockedAt == null)
      throw new Problem('at-fault', 'No rule was locked: this is not a claim. Lock the rule first.', [
        { pointer: '#', detail: 'Lock the rule, then record the verdict.' },
      ])
    const recorded = (await verdictsOf(tx, trialId)).find(
      (it) => it.look === verdict.look && it.withinLevelId === (within ?? null),
    )
    const kept = recorded && presentVerdict(recorded)
    if (!kept)
      throw new Problem(
        'at-fault',
        'A sheet is published from a recorded verdict. Record the verdict first.',
        [{ pointer: '#', detail: 'This verdict is not recorded yet.' }],
      )
    if (kept.answer !== verdict.answer || kept.headline !== verdict.headline)
      throw new Problem(
        'at-fault',
        `Since the verdict was recorded the results have changed. Recorded: “${kept.headline}” Today: “${verdict.headline}”`,
        [{ pointer: '#', detail: 'Write a new edition of the rule, and record its verdict.' }],
      )
    const parts = findParts(record, finding, { within })
    const body = JSON.stringify({
      sheet: sheetOf(record, finding, parts),
      finding,
      ...(parts.length > 1 ? { parts } : {}),
    } satisfies FrozenBody)
    return tx
      .insertInto('evidenceSheet')
      .values({
        trialIds: [trialId],
        body,
        sha256: createHash('sha256').update(body).digest('hex'),
        step: finding.evidenceStep.step,
      })
      .returningAll()
      .executeTakeFirstOrThrow()
  })
}

export function presentSheet(row: SheetRow): EvidenceSheet {
  const { sheet } = row.body as unknown as FrozenBody
  return {
    id: row.id,
    version: row.version,
    createdAt: row.createdAt.toISOString(),
    trialIds: row.trialIds,
    headline: sheet.headline,
    step: row.step,
    sha256: row.sha256,
    madeAt: row.madeAt.toISOString(),
    path: `/sheets/${row.id}`,
  }
}
