import { type Percent, percent } from '#api/science/units.ts'

/**
 * The glasses of a dilution ladder: shares of the starting bath, in equal glasses beside each other. Ordered steps.
 */
export const ladderSteps: readonly number[] = [100, 50, 25, 12.5, 6, 3, 1.5, 0]

/**
 * Dye left in the bath, by the glass of the ladder that looks alike, and the share the yarn has taken.
 *
 * The eye places a glass to within a factor of about 1.4 either way (practice, not a standard); `least` and `most`
 * are those limits of what is left, 100 % at most. “0 %” means less than the eye can tell, so its most is half the last step.
 *
 * @param left  One of `ladderSteps`.
 *
 * @throws RangeError for anything else.
 *
 * @example
 * leftByLadder(6) // { left: 6, least: 4.29, most: 8.4, exhaustion: 94 }
 */
export function leftByLadder(left: number): {
  left: Percent
  least: Percent
  most: Percent
  exhaustion: Percent
} {
  if (!ladderSteps.includes(left))
    throw new RangeError(`a dilution ladder has the steps ${ladderSteps.join(', ')} %`)
  return {
    left: percent(left),
    least: percent(left / 1.4),
    most: percent(left === 0 ? 0.75 : Math.min(100, left * 1.4)),
    exhaustion: percent(100 - left),
  }
}
