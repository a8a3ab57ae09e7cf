import type { Sheet } from '#api/contract/evidence.ts'
import type { Finding } from '#api/contract/finding.ts'
import type { TrialRecord } from '#db/trial-record.ts'
import { sheetOfFinding } from './sheet-of-finding.ts'

/** The sheet of a trial as it stands, of the skeins that its finding is about. */
export function sheetOf(record: TrialRecord, finding: Finding): Sheet {
  const judged = new Set(finding.skeins.map(({ id }) => id))
  const of = record.skeins.filter((skein) => finding.within === null || judged.has(skein.id))
  const bases = [...new Set(of.flatMap((skein) => (skein.base === null ? [] : [skein.base])))]
  return sheetOfFinding(finding, { held: record.trial.held, bases })
}
