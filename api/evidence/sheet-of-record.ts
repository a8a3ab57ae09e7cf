import type { Sheet } from '#api/contract/evidence.ts'
import type { Finding } from '#api/contract/finding.ts'
import { changeInWords, changesAfterReading } from '#api/judging/journal.ts'
import { day, daysFromTo } from '#api/words/dates.ts'
import type { TrialRecord } from '#db/trial-record.ts'
import { sheetOfFinding } from './sheet-of-finding.ts'

/** The sheet of a trial as it stands, of the skeins that its finding is about and of the parts cut from them. */
export function sheetOf(record: TrialRecord, finding: Finding, parts: readonly Finding[]): Sheet {
  const judged = new Set(parts.flatMap(({ skeins }) => skeins.map(({ id }) => id)))
  const mine = record.skeins.filter(({ id, cutFromId }) => judged.has(id) || judged.has(cutFromId ?? ''))
  const of = finding.within === null ? record.skeins : mine
  const bases = [...new Set(of.flatMap((skein) => (skein.base === null ? [] : [skein.base])))]
  const ids = new Set(mine.map(({ id }) => id))
  const vessels = new Set(
    record.places.filter(({ skeinId }) => ids.has(skeinId)).map(({ vesselId }) => vesselId),
  )
  return {
    ...sheetOfFinding(finding, {
      held: record.trial.held,
      bases,
      parts,
      exposures: record.exposures.filter(({ vesselId }) => vessels.has(vesselId)),
      viewings: record.viewings.filter(({ skeinId }) => ids.has(skeinId)),
    }),
    dates: daysOfWork(record),
    controls: controlsInWords(record),
    corrections: correctionsInWords(record),
    changes: changesAfterReading(record.journal)
      .filter(({ action }) => action !== 'corrected')
      .map(changeInWords),
  }
}

/** The days on which it was worked and read, as far as they are recorded. */
function daysOfWork({ sessions, readings }: TrialRecord): string {
  const days = [
    ...sessions.flatMap(({ heldOn }) => heldOn ?? []),
    ...readings.flatMap(({ takenAt }) => takenAt?.toISOString().slice(0, 10) ?? []),
  ]
  return daysFromTo(days) ?? 'dates not recorded'
}

const controlRoles = ['blank', 'twin', 'dark twin', 'known good', 'known bleeder', 'standard', 'blue wool']

/** Every control that lay beside, by its role. */
function controlsInWords({ skeins }: TrialRecord): string {
  const found = controlRoles.flatMap((role) => {
    const codes = skeins.filter((skein) => skein.role === role).map(({ code }) => code)
    return codes.length === 0
      ? []
      : [`${role}: ${codes.slice(0, 12).join(', ')}${codes.length > 12 ? ', …' : ''}`]
  })
  return found.length === 0 ? 'No blank, twin or known control was recorded.' : `${found.join('; ')}.`
}

/** Every measured row that corrects an earlier one, with its reason. */
function correctionsInWords({ skeins, readings, outcomes }: TrialRecord): string[] {
  const codes = new Map(skeins.map(({ id, code }) => [id, code]))
  return [...readings, ...outcomes]
    .filter(({ supersedesId }) => supersedesId !== null)
    .map(
      ({ skeinId, reason, createdAt }) =>
        `${skeinId === null ? 'A vessel' : (codes.get(skeinId) ?? 'A skein')}, corrected ${day(createdAt)}: ${reason ?? 'no reason given'}.`,
    )
}
