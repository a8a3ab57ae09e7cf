import { type Grams, grams, type Millilitres, millilitres, type Percent } from '#api/science/units.ts'
import { acetic, citric, citricMonohydrate } from './acids.ts'

export type CitricKind = 'citric' | 'citric-monohydrate'

/**
 * Acid that vinegar can give up, in meq: one for each molecule of acetic acid.
 *
 * @example
 * vinegarMilliequivalents(1, 5) // 0.833
 */
export function vinegarMilliequivalents(vinegar: Millilitres, strength: Percent): number {
  return (vinegar * strength * 10) / acetic.molarMass
}

/**
 * Acid that citric acid can give up, in meq: three for each molecule, in the end.
 *
 * @example
 * citricMilliequivalents(1, 'citric') // 15.6
 */
export function citricMilliequivalents(weight: Grams, kind: CitricKind): number {
  return (3000 * weight) / molarMassOf(kind)
}

/**
 * Vinegar that carries as much acid as citric acid does. The same acid, not the same pH: near pH 4 citric acid
 * has given up only about 1.2 to 1.3 of its three; `startPh` says what the bath will read.
 *
 * @example
 * vinegarForCitric(1, 'citric', 5) // 18.8
 */
export function vinegarForCitric(weight: Grams, kind: CitricKind, strength: Percent): Millilitres {
  if (!(strength > 0)) throw new RangeError('vinegar holds some acid: its strength is more than 0 %')
  return millilitres(citricMilliequivalents(weight, kind) / vinegarMilliequivalents(millilitres(1), strength))
}

/**
 * Citric acid that carries as much acid as vinegar does. The same acid, not the same pH.
 *
 * @example
 * citricForVinegar(100, 5, 'citric') // 5.332
 */
export function citricForVinegar(vinegar: Millilitres, strength: Percent, kind: CitricKind): Grams {
  return grams(vinegarMilliequivalents(vinegar, strength) / citricMilliequivalents(grams(1), kind))
}

function molarMassOf(kind: CitricKind): number {
  return kind === 'citric' ? citric.molarMass : citricMonohydrate.molarMass
}
