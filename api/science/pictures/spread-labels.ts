/** A label that would like to stand at `at` and takes `size` of room along the line, gap included. */
export type WantedPlace = { readonly at: number; readonly size: number }

/**
 * Places labels along a line so that none touch, each as near to where it would like to be as can be: the sum of the
 * squared moves is least. In any order; the places come back in the order given. Where the line is too short for all of them they
 * share it evenly.
 *
 * Pool adjacent violators on the wishes less the room taken before them: Barlow, Bartholomew, Bremner & Brunk (1972),
 * Statistical Inference under Order Restrictions, section 1.2.
 *
 * @param bounds The two ends of the line; a label keeps wholly inside them.
 *
 * @example
 * spreadLabels([{ at: 10, size: 8 }, { at: 12, size: 8 }], { from: 0, to: 100 }) // [7, 15]
 */
export function spreadLabels(wanted: readonly WantedPlace[], bounds: { from: number; to: number }): number[] {
  const order = wanted.map((_, place) => place).toSorted((one, other) => at(wanted, one) - at(wanted, other))
  const room = wanted.reduce((sum, { size }) => sum + size, 0)
  const squeeze = room > bounds.to - bounds.from ? (bounds.to - bounds.from) / room : 1

  // Take away the room that the labels before it need: what is left may only rise, and has the same two bounds for all.
  const before: number[] = []
  let taken = 0
  for (const index of order) {
    const half = (size(wanted, index) * squeeze) / 2
    before.push(taken + half)
    taken += 2 * half
  }
  const free = order.map((index, rank) => at(wanted, index) - (before[rank] ?? 0))
  const risen = nearestRising(free)

  const places = wanted.map(() => 0)
  order.forEach((index, rank) => {
    const held = Math.max(bounds.from, Math.min(bounds.to - taken, risen[rank] ?? 0))
    places[index] = held + (before[rank] ?? 0)
  })
  return places
}

/** The rising numbers nearest to these, by least squares: neighbours out of order are pooled to their mean. */
function nearestRising(values: readonly number[]): number[] {
  const pools: { sum: number; count: number }[] = []
  for (const value of values) {
    let pool = { sum: value, count: 1 }
    for (
      let last = pools.at(-1);
      last !== undefined && last.sum / last.count > pool.sum / pool.count;
      last = pools.at(-1)
    ) {
      pools.pop()
      pool = { sum: pool.sum + last.sum, count: pool.count + last.count }
    }
    pools.push(pool)
  }
  return pools.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count))
}

function at(wanted: readonly WantedPlace[], index: number): number {
  return wanted[index]?.at ?? 0
}

function size(wanted: readonly WantedPlace[], index: number): number {
  return wanted[index]?.size ?? 0
}
