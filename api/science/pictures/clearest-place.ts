import type { Box } from './marks.ts'

/**
 * Which of several places for a label covers least of what is drawn already; the first of equals, so the order of the
 * places is the order of preference. A place that sticks out of `within` is taken only if all do.
 *
 * @returns The place’s position in the list; −1 when there is none.
 *
 * @example
 * const at = (left) => ({ left, top: 0, width: 10, height: 10 })
 * clearestPlace([at(0), at(20)], [at(5)]) // 1
 */
export function clearestPlace(places: readonly Box[], taken: readonly Box[], within?: Box): number {
  let best = -1
  let least = Number.POSITIVE_INFINITY
  places.forEach((place, index) => {
    const covered = taken.reduce((sum, box) => sum + overlap(place, box), 0)
    const outside = within === undefined ? 0 : area(place) - overlap(place, within)
    const cost = covered + 1000 * (outside > 0.5 ? 1 : 0) + 10 * outside
    if (cost >= least - 0.5) return
    least = cost
    best = index
  })
  return best
}

/**
 * The area that two boxes share.
 *
 * @example
 * overlap({ left: 0, top: 0, width: 4, height: 4 }, { left: 2, top: 1, width: 4, height: 4 }) // 6
 */
export function overlap(one: Box, other: Box): number {
  const width = Math.min(one.left + one.width, other.left + other.width) - Math.max(one.left, other.left)
  const height = Math.min(one.top + one.height, other.top + other.height) - Math.max(one.top, other.top)
  return width > 0 && height > 0 ? width * height : 0
}

function area({ width, height }: Box): number {
  return width * height
}
