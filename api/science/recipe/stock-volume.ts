import {
  type Grams,
  type Millilitres,
  millilitres,
  type PercentInVolume,
  type PercentOnFibre,
} from '#api/science/units.ts'

/**
 * Stock to measure out for a depth of shade.
 *
 * @param stock  Grams of dye made up to 100 mL; more than 0.
 *
 * @throws RangeError for a stock without dye.
 *
 * @example
 * stockVolume(340, 1, 1) // 340
 */
export function stockVolume(fibre: Grams, depth: PercentOnFibre, stock: PercentInVolume): Millilitres {
  if (!(stock > 0)) throw new RangeError('a stock holds some dye: its strength is more than 0 %')
  return millilitres((fibre * depth) / stock)
}
