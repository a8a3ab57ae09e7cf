import { chiSquaredQuantile } from '#api/science/statistics/chi-squared.ts'
import type { Noise } from './noise.ts'

/**
 * Up to which ΔE00 something that was kept from all change counts as unchanged: 95 of 100 readings of unchanged skeins stay
 * under it, by the upper limit of the measuring error. Their squared lengths are r² ÷ 3 times chi-squared with 3 degrees of freedom.
 *
 * @param most  Where the measuring error was taken from twins themselves, or is not known, no more than this: a twin
 *              that changed would else excuse itself.
 *
 * @example
 * unchangedUpTo({ kind: 'instrument', upperRms: 0.419 }, 1) // 0.676
 * @example
 * [unchangedUpTo({ kind: 'twins', upperRms: 5 }, 1), unchangedUpTo(undefined, 1)] // [1, 1]
 */
export function unchangedUpTo(noise: Pick<Noise, 'kind' | 'upperRms'> | undefined, most: number): number {
  if (!noise) return most
  const reach = noise.upperRms * Math.sqrt(chiSquaredQuantile(0.95, 3) / 3)
  return noise.kind === 'twins' ? Math.min(reach, most) : reach
}
