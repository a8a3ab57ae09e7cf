export type Node = { readonly at: number; readonly weight: number }

const known = new Map<number, readonly Node[]>()

/**
 * Nodes and weights of Gauss's rule on [−1, 1], by Newton's method on the Legendre polynomial (Abramowitz & Stegun
 * 1964, 25.4.29).
 *
 * @throws RangeError unless n is a whole number from 1 to 64
 *
 * @example
 * gaussLegendre(2).map(({ at }) => at) // [-0.577350269189626, 0.577350269189626]
 */
export function gaussLegendre(n: number): readonly Node[] {
  if (!(Number.isInteger(n) && n >= 1 && n <= 64))
    throw new RangeError('Gauss’s rule takes 1 to 64 nodes here')
  const kept = known.get(n)
  if (kept) return kept
  const made = Array.from({ length: n }, (_, i) => nodeOf(n, i))
  known.set(n, made)
  return made
}

function nodeOf(n: number, i: number): Node {
  let at = -Math.cos((Math.PI * (i + 0.75)) / (n + 0.5))
  let slope = 1
  for (let round = 0; round < 12; round++) {
    let [before, here] = [0, 1]
    for (let k = 1; k <= n; k++) [before, here] = [here, ((2 * k - 1) * at * here - (k - 1) * before) / k]
    slope = (n * (before - at * here)) / (1 - at * at)
    at -= here / slope
  }
  return { at, weight: 2 / ((1 - at * at) * slope * slope) }
}

/** Where a function turns quickly: within `reach` of `at`, by nothing finer than `fine`. */
export type Turn = { readonly at: number; readonly reach: number; readonly fine: number }

/**
 * The integral of a function that is smooth over lengths of `coarse`, but for some known turns: Gauss's rule with 16
 * nodes on panels that are short only where they have to be.
 *
 * @example
 * integralWithTurns((z) => 1 / (1 + (z / 0.01) ** 2), { from: -1, to: 1, coarse: 0.5, turns: [{ at: 0, reach: 1, fine: 0.01 }] }) // 0.0312159332
 */
export function integralWithTurns(
  f: (z: number) => number,
  {
    from,
    to,
    coarse,
    turns,
  }: { readonly from: number; readonly to: number; readonly coarse: number; readonly turns: readonly Turn[] },
): number {
  const rule = gaussLegendre(16)
  let sum = 0
  let start = from
  while (start < to) {
    let end = Math.min(to, start + coarse)
    for (const { at, reach, fine } of turns) {
      if (start >= at + reach) continue
      // Up to the turn in one stride, within it by fine ones.
      const inside = start >= at - reach
      end = Math.min(end, inside ? start + fine : Math.max(at - reach, start + fine))
    }
    const half = (end - start) / 2
    const middle = start + half
    for (const { at, weight } of rule) sum += half * weight * f(middle + half * at)
    start = end
  }
  return sum
}
