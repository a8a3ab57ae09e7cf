import { outcomeKind } from '#api/contract/outcomes.ts'
import type { LevelRow } from '#db/trials.ts'
import { alikeColours } from './alike-colours.ts'
import { alikeMeasured } from './alike-measured.ts'
import type { Asked, Engine } from './asked.ts'
import { apartBy, judgedByPairs } from './judged-by-pairs.ts'
import { ordinalScales } from './no-worse.ts'
import { notAsked } from './not-asked.ts'

/**
 * Do two come out the same, within the margin? Of a loss or another measured outcome the difference; of colours, ΔE00
 * between the two in each session; of grades, steps and yes or no every pair. The colours are asked for as the outcome
 * `colour`, or as a loss before any wear, which is none.
 */
export const judgeAlike: Engine = (asked) => {
  const { condition } = asked
  const reference = heldAgainst(asked)
  if (!reference) return [notAsked(asked, 'No level was chosen as the one that the others are held against.')]
  if (ordinalScales.has(outcomeKind(condition.outcome).scale)) return judgedByPairs(asked, reference, apartBy)
  const { margin } = condition
  if (margin === undefined || !(margin > 0))
    return [notAsked(asked, 'It was not said how much of a difference you would accept.')]
  return isOfColours(condition)
    ? alikeColours(asked, reference, margin)
    : alikeMeasured(asked, reference, margin)
}

function isOfColours({ outcome, wear }: Asked['condition']): boolean {
  return outcome === 'colour' || (outcome === 'dE00' && Object.keys(wear).length === 0)
}

/** Of two levels either may be held against the other. */
function heldAgainst({ reference, levels }: Asked): LevelRow | undefined {
  return reference ?? (levels.length === 2 ? levels[0] : undefined)
}
