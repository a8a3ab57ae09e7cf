import { outcomeKind } from '#api/contract/outcomes.ts'
import type { Engine } from './asked.ts'
import { judgedByPairs, worseBy } from './judged-by-pairs.ts'
import { noWorseMeasured } from './no-worse-measured.ts'
import { notAsked } from './not-asked.ts'

/** Outcomes that are an order, not a measure: nothing is averaged, and pairs are counted. */
export const ordinalScales: ReadonlySet<string> = new Set(['grade', 'steps', 'yes-no'])

/**
 * No worse than the reference by more than the margin: every other level, or arm, answered for itself. In an ordered
 * factor the steps stop at the first that does not hold; that is for whoever joins the answers.
 */
export const judgeNoWorse: Engine = (asked) => {
  const { reference, condition } = asked
  if (!reference) return [notAsked(asked, 'No level was chosen as the one that the others are held against.')]
  if (ordinalScales.has(outcomeKind(condition.outcome).scale)) return judgedByPairs(asked, reference, worseBy)
  const { margin } = condition
  if (margin === undefined || !(margin > 0))
    return [notAsked(asked, 'It was not said how much extra change you would accept.')]
  return noWorseMeasured(asked, reference, margin)
}
