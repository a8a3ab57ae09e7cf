import {
  type Grams,
  type Millilitres,
  type MillilitresPerGram,
  millilitres,
  millilitresPerGram,
} from '#api/science/units.ts'

/**
 * The whole bath for a weight of dry fibre, dye, acid and water together.
 *
 * @example
 * bathVolume(115, 30) // 3450
 */
export function bathVolume(fibre: Grams, ratio: MillilitresPerGram): Millilitres {
  return millilitres(fibre * ratio)
}

/**
 * How long the bath is: millilitres for each gram of dry fibre.
 *
 * @throws RangeError without fibre.
 *
 * @example
 * liquorRatio(3450, 115) // 30
 */
export function liquorRatio(bath: Millilitres, fibre: Grams): MillilitresPerGram {
  if (!(fibre > 0)) throw new RangeError('a liquor ratio needs more than 0 g of fibre')
  return millilitresPerGram(bath / fibre)
}
