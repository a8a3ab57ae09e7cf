import { createHash } from 'node:crypto'
import type { Kysely } from 'kysely'
import type { EvidenceSheet, Sheet } from '#api/contract/evidence.ts'
import type { Finding } from '#api/contract/finding.ts'
import { Problem } from '#api/contract/problem.ts'
import type { WithinLevel } from '#api/contract/within-level.ts'
import { findIn } from '#api/findings/find.ts'
import { inTransaction } from '#db/in-transaction.ts'
import type { SheetRow } from '#db/sheets.ts'
import type { Database } from '#db/tables.ts'
import { trialRecord } from '#db/trial-record.ts'
import { holdTrial } from '#db/trials.ts'
import { sheetOf } from './sheet-of-record.ts'

/** What is frozen: the words and the whole finding behind them. */
export type FrozenBody = { readonly sheet: Sheet; readonly finding: Finding }

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
    const finding = findIn(record, { within, at: '#/within' })
    if (!finding.verdict)
      throw new Problem('at-fault', `A sheet is made from a verdict. ${finding.waitsFor ?? ''}`.trim())
    const body = JSON.stringify({ sheet: sheetOf(record, finding), finding } satisfies FrozenBody)
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
