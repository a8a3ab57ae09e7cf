import type { SeededRandom } from './seeded-random.ts'

/**
 * Things in an order drawn by lot: every order is alike likely. What comes in is left as it is.
 *
 * @see Durstenfeld (1964), Commun. ACM 7, 420: each place from the last draws among those not yet drawn.
 *
 * @example
 * const always = { whole: () => 0, uniform: () => 0, below: () => 0, normal: () => 0 }
 * randomise(['a', 'b', 'c'], always) // ['b', 'c', 'a']
 */
export function randomise<Thing>(things: readonly Thing[], random: SeededRandom): Thing[] {
  const drawn = [...things]
  for (let last = drawn.length - 1; last > 0; last--) {
    const other = random.below(last + 1)
    const [kept, taken] = [drawn[last], drawn[other]]
    if (kept === undefined || taken === undefined) continue
    drawn[last] = taken
    drawn[other] = kept
  }
  return drawn
}
