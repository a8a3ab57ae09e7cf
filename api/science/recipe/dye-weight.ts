import { type Grams, grams, type PercentOnFibre } from '#api/science/units.ts'

/**
 * Dye powder for a depth of shade.
 *
 * @example
 * dyeWeight(150, 2) // 3
 */
export function dyeWeight(fibre: Grams, depth: PercentOnFibre): Grams {
  return grams((fibre * depth) / 100)
}
