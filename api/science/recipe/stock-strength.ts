import { type Grams, type Millilitres, type PercentInVolume, percentInVolume } from '#api/science/units.ts'

/**
 * Strength of a stock: grams of dye in 100 mL of the finished solution.
 *
 * @param madeUpTo  The whole volume, dye and water together; more than 0.
 *
 * @throws RangeError for no volume.
 *
 * @example
 * stockStrength(5, 500) // 1
 */
export function stockStrength(dye: Grams, madeUpTo: Millilitres): PercentInVolume {
  if (!(madeUpTo > 0)) throw new RangeError('a stock is made up to more than 0 mL')
  return percentInVolume((100 * dye) / madeUpTo)
}
