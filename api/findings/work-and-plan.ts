import type { Caution } from '#api/contract/finding.ts'
import type { JudgedTrial } from '#api/judging/judged-trial.ts'
import { counted } from '#api/words/numbers.ts'
import type { SkeinRecord } from '#db/trial-record.ts'

/** Said where skeins were given another level than the one drawn for their place. */
export function otherwiseCaution(
  levelled: readonly { readonly skein: SkeinRecord }[],
  { record, histories }: JudgedTrial,
): Caution[] {
  const things = new Set(
    record.treatments
      .filter(({ levelId, drawnLevelId }) => drawnLevelId !== null && drawnLevelId !== levelId)
      .map(({ skeinId, vesselId, sessionId }) => skeinId ?? vesselId ?? sessionId),
  )
  const otherwise = levelled.filter(
    ({ skein }) =>
      things.has(skein.id) ||
      histories.stays(skein).some(({ vessel }) => things.has(vessel.id) || things.has(vessel.sessionId)),
  ).length
  if (otherwise === 0) return []
  return [
    {
      kind: 'doubt',
      title: 'The work differed from the plan',
      text: `${otherwise} of ${counted(levelled.length, { one: 'skein was', many: 'skeins were' })} given another level than was drawn for ${levelled.length === 1 ? 'its place' : 'their places'}. They are judged by what was done; the lot did not choose their places.`,
    },
  ]
}
