import type { Condition } from '#api/judging/condition.ts'
import type { ResultSeen } from '#db/trial-record.ts'

/** Which outcome a picture shows while no rule names one. */
const tellsMost = [
  'dE00',
  'spread',
  'light rating',
  'dye left',
  'staining dE76',
  'staining',
  'change grade',
  'lightness',
]

/** Without a rule the pictures still show something: the loss at the furthest wear that was read, else what tells most. */
export function plainCondition(results: readonly ResultSeen[]): Condition | undefined {
  const rank = ({ kind }: ResultSeen) =>
    tellsMost.includes(kind) ? tellsMost.indexOf(kind) : tellsMost.length
  const [some] = results
    .filter((result) => result.kind !== 'dE00' || result.wearKey !== '')
    .sort((a, b) => rank(a) - rank(b) || (b.wearAmount ?? 0) - (a.wearAmount ?? 0))
  if (!some) return undefined
  return {
    outcome: some.kind,
    wear: some.wear,
    end: 'low',
    against: 'reference',
    question: 'no-worse',
    byLot: false,
    direction: 'smaller is better',
  }
}
