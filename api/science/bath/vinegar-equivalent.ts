import { type Grams, type Millilitres, millilitres, type Percent } from '#api/science/units.ts'

/**
 * Vinegar of any strength, as vinegar of 5 %: the volume of 5 % that holds the same acetic acid.
 *
 * @example
 * vinegarEquivalent(100, 10) // 200
 */
export function vinegarEquivalent(vinegar: Millilitres, strength: Percent): Millilitres {
  return millilitres((vinegar * strength) / 5)
}

/**
 * An amount in the bath, for each 100 g of dry fibre.
 *
 * @throws RangeError without fibre.
 *
 * @example
 * perHundredGrams(236.588, 453.592) // 52.2
 */
export function perHundredGrams(amount: number, fibre: Grams): number {
  if (!(fibre > 0)) throw new RangeError('an amount per 100 g needs more than 0 g of fibre')
  return (100 * amount) / fibre
}
