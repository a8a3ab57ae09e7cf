import type { Caution } from '#api/contract/finding.ts'
import { counted } from '#api/science/verdicts/figure.ts'
import type { JudgedAlike } from './judge-within.ts'
import type { LevelledSkein } from './ladder-rows.ts'

/** Said where skeins were given another level than the one drawn for their place. */
export function otherwiseCaution(
  levelled: readonly LevelledSkein[],
  { record, histories }: Pick<JudgedAlike, 'record' | 'histories'>,
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
