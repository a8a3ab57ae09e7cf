import type { MillilitresPerGram } from '#api/science/units.ts'

/**
 * Share of loose dye that is left after rinses, if rinsing only dilutes it: 1 before the first.
 *
 * A fall flatter than this means that dye is still leaving the fibre.
 *
 * @param rinses   How many changes of water, 0 or more.
 * @param wetness  Grams of liquor that stay in each gram of yarn: about 1.2 squeezed, 0.5 spun.
 * @param water    Fresh water for each gram of yarn.
 *
 * @throws RangeError when there is neither water nor wetness.
 *
 * @example
 * leftAfterRinses(2, 1.2, 20) // 0.0032
 */
export function leftAfterRinses(rinses: number, wetness: number, water: MillilitresPerGram): number {
  if (!(wetness + water > 0)) throw new RangeError('rinsing needs some water')
  return (wetness / (wetness + water)) ** rinses
}

/**
 * The whole fall by dilution alone, from before the first rinse to after the last.
 *
 * @example
 * rinseFall(2, 1, 9) // [1, 0.1, 0.01]
 */
export function rinseFall(rinses: number, wetness: number, water: MillilitresPerGram): number[] {
  return Array.from({ length: rinses + 1 }, (_, done) => leftAfterRinses(done, wetness, water))
}
