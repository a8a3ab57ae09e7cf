import type { Kysely } from 'kysely'
import type { EvidenceSheet } from '#api/contract/evidence.ts'
import { standingOf, todayOf } from '#api/findings/standing.ts'
import { day } from '#api/words/dates.ts'
import { type SheetRow, sheetsOf } from '#db/sheets.ts'
import type { Database } from '#db/tables.ts'
import { trialRecord } from '#db/trial-record.ts'
import { checksumMatches } from './checksum.ts'

/** The published sheets of a trial, newest first, each with how it stands today. */
export async function sheetsOfTrial(db: Kysely<Database>, trialId: string): Promise<EvidenceSheet[]> {
  const record = await trialRecord(db, trialId)
  const today = todayOf(record)
  const rows = await sheetsOf(db, trialId)
  return rows.map((row) => {
    const { sheet, finding } = row.body
    const stratum = stratumOf(row)
    const newer = rows.find((it) => it.madeAt > row.madeAt && stratumOf(it) === stratum)
    const kept = {
      finding,
      at: row.madeAt,
      newer: newer && `a newer sheet was published ${day(newer.madeAt)}`,
    }
    return {
      id: row.id,
      version: row.version,
      createdAt: row.createdAt.toISOString(),
      trialIds: row.trialIds,
      headline: sheet.headline,
      answer: sheet.answer,
      stratum,
      step: row.step,
      sha256: row.sha256,
      checksumMatches: checksumMatches(row),
      madeAt: row.madeAt.toISOString(),
      path: `/sheets/${row.id}`,
      ...standingOf(record, kept, today(stratum)),
    }
  })
}

/** The part that a sheet is of. Those of the first version never were of more than one. */
export function stratumOf(row: SheetRow): string {
  const { finding, parts } = row.body
  return parts !== undefined || finding.within === null ? '' : finding.within.levelId
}
