import {
  type Grams,
  type MilligramsPerLitre,
  type Millilitres,
  type MolesPerLitre,
  molesPerLitre,
  type Percent,
} from '#api/science/units.ts'
import type { CitricKind } from './acid-swap.ts'
import { acetic, alkalinityPerMole, citric, citricMonohydrate } from './acids.ts'

/**
 * Acetic acid in the whole bath.
 *
 * @param bath  All of it: water, vinegar, stock; more than 0.
 *
 * @example
 * aceticInBath(250, 5, 10000) // 0.020815
 */
export function aceticInBath(vinegar: Millilitres, strength: Percent, bath: Millilitres): MolesPerLitre {
  return inBath((vinegar * strength) / 100 / acetic.molarMass, bath)
}

/**
 * Citric acid in the whole bath.
 *
 * @example
 * citricInBath(5, 'citric-monohydrate', 4000) // 0.005948
 */
export function citricInBath(weight: Grams, kind: CitricKind, bath: Millilitres): MolesPerLitre {
  return inBath(weight / (kind === 'citric' ? citric.molarMass : citricMonohydrate.molarMass), bath)
}

/**
 * Alkalinity of the water, as a report gives it (mg/L of calcium carbonate), in moles of acid that it takes up.
 *
 * @example
 * alkalinityInMoles(150) // 0.002998
 */
export function alkalinityInMoles(alkalinity: MilligramsPerLitre): MolesPerLitre {
  return molesPerLitre(alkalinity / alkalinityPerMole)
}

function inBath(moles: number, bath: Millilitres): MolesPerLitre {
  if (!(bath > 0)) throw new RangeError('a bath holds more than 0 mL')
  return molesPerLitre((1000 * moles) / bath)
}
