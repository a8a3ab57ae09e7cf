import type { Sheet } from '#api/contract/evidence.ts'
import type { Finding } from '#api/contract/finding.ts'
import type { TrialRecord } from '#db/trial-record.ts'
import { sheetOfFinding } from './sheet-of-finding.ts'

/** The sheet of a trial as it stands, of the skeins that its finding is about and of the parts cut from them. */
export function sheetOf(record: TrialRecord, finding: Finding): Sheet {
  const judged = new Set(finding.skeins.map(({ id }) => id))
  const mine = record.skeins.filter(({ id, cutFromId }) => judged.has(id) || judged.has(cutFromId ?? ''))
  const of = finding.within === null ? record.skeins : mine
  const bases = [...new Set(of.flatMap((skein) => (skein.base === null ? [] : [skein.base])))]
  const ids = new Set(mine.map(({ id }) => id))
  const vessels = new Set(
    record.places.filter(({ skeinId }) => ids.has(skeinId)).map(({ vesselId }) => vesselId),
  )
  return sheetOfFinding(finding, {
    held: record.trial.held,
    bases,
    exposures: record.exposures.filter(({ vesselId }) => vessels.has(vesselId)),
    viewings: record.viewings.filter(({ skeinId }) => ids.has(skeinId)),
  })
}
