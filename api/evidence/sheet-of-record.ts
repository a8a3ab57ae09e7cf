import type { Sheet } from '#api/contract/evidence.ts'
import type { Finding } from '#api/contract/finding.ts'
import type { TrialRecord } from '#db/trial-record.ts'
import { sheetOfFinding } from './sheet-of-finding.ts'

/** The sheet of a trial as it stands. */
export function sheetOf(record: TrialRecord, finding: Finding): Sheet {
  const bases = [...new Set(record.skeins.flatMap((skein) => (skein.base === null ? [] : [skein.base])))]
  return sheetOfFinding(finding, { held: record.trial.held, bases })
}
