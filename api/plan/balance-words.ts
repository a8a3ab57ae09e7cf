import { inWords } from '#api/contract/number-in-words.ts'
import type { StoodAt } from '#api/science/design/draw-places.ts'

/**
 * How evenly the levels stand over the places (or turns), said at the draw: whether it is even, as even as the number
 * of sessions allows, or uneven from before. Undefined where nothing was drawn.
 *
 * @example
 * balanceInWords([{ group: 'a', place: 1, order: 1 }, { group: 'b', place: 2, order: 2 }], 'place') // 'With this number of sessions each level meets 1 of 2 places, none twice; 2 sessions take each through all.'
 */
export function balanceInWords(stood: readonly StoodAt[], of: 'place' | 'turn'): string | undefined {
  const met = stood
    .map(({ group, place, order }) => ({ group, at: of === 'place' ? place : order }))
    .filter(({ at }) => at > 0)
  const positions = [...new Set(met.map(({ at }) => at))]
  const groups = [...new Set(met.map(({ group }) => group))]
  if (positions.length < 2 || groups.length < 2) return undefined
  const counts = groups.flatMap((group) =>
    positions.map((position) => met.filter((it) => it.group === group && it.at === position).length),
  )
  const [least, most] = [Math.min(...counts), Math.max(...counts)]
  // So many sessions take a level of so many vessels through all places.
  const round = groups.length
  if (most - least > 1)
    return `Not even over the ${of}s: a level stood at one ${of} ${inWords(most)} times, at another ${least === 0 ? 'never' : inWords(least)}. More sessions, drawn here, even it out.`
  if (least === most) return `Each level meets each ${of} equally often.`
  if (least === 0)
    return `With this number of sessions each level meets ${met.length / groups.length} of ${positions.length} ${of}s, none twice; ${round} sessions take each through all.`
  return `As even over the ${of}s as this number of sessions allows: a level meets some of them once more than others. ${round} sessions, or twice as many, would be quite even.`
}
