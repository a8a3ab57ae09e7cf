import type { Kysely } from 'kysely'
import type { EvidenceSheet } from '#api/contract/evidence.ts'
import type { SheetRow } from '#db/sheets.ts'
import type { Database } from '#db/tables.ts'
import { checksumMatches } from './checksum.ts'
import { sheetsOfTrial } from './sheets-of-trial.ts'

export type BesideSheet = {
  /** What is said at its top, outside its own words: superseded, judged by an older version, changed after publishing. */
  readonly marks: readonly string[]
  /** The other published sheets of its trial. */
  readonly others: readonly Pick<EvidenceSheet, 'headline' | 'answer' | 'madeAt' | 'path' | 'superseded'>[]
}

/** What stands beside a published sheet where it is shown today. */
export async function besideSheet(db: Kysely<Database>, row: SheetRow): Promise<BesideSheet> {
  const [trialId] = row.trialIds
  const sheets = trialId === undefined ? [] : await sheetsOfTrial(db, trialId)
  const mark = sheets.find(({ id }) => id === row.id)?.mark
  return {
    marks: [
      ...(checksumMatches(row)
        ? []
        : ['Its checksum does not match: what is stored here is not what was published.']),
      ...(mark ? [mark] : []),
    ],
    others: sheets.filter(({ id }) => id !== row.id),
  }
}
