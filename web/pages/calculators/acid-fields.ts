import { aceticInBath, alkalinityInMoles, citricInBath } from '#api/science/bath/acid-in-bath.ts'
import { vinegarForCitric } from '#api/science/bath/acid-swap.ts'
import type { BathAcids } from '#api/science/bath/start-ph.ts'
import { perHundredGrams, vinegarEquivalent } from '#api/science/bath/vinegar-equivalent.ts'
import { grams, type MolesPerLitre, milligramsPerLitre, millilitres, percent } from '#api/science/units.ts'
import type { Acid } from '#web/pages/calculators/acid-words.ts'
import type { Studio } from '#web/pages/calculators/studio.ts'
import { useMeasures } from '#web/pages/calculators/use-measures.ts'

export type AcidKey = 'vinegar' | 'citric' | 'strength' | 'water' | 'bath' | 'yarn'

export type AcidBath = {
  readonly acids?: BathAcids
  readonly alkalinity?: MolesPerLitre
  /** mL of 5 % vinegar for 100 g of yarn, and in a litre of bath; citric acid counted by its acid. */
  readonly per100g?: number | undefined
  readonly perLitre?: number | undefined
}

/** What was typed, as it stands in the bath; what is missing is left out. */
export function bathOf(acid: Acid, value: (key: AcidKey) => number | undefined): AcidBath {
  const [bath, yarn, water] = [value('bath'), value('yarn'), value('water')]
  const alkalinity = water === undefined ? {} : { alkalinity: alkalinityInMoles(milligramsPerLitre(water)) }
  const [amount, strength] = [acid === 'acetic' ? value('vinegar') : value('citric'), value('strength')]
  if (amount === undefined || (acid === 'acetic' && strength === undefined)) return alkalinity
  const vinegarStrength = percent(strength ?? 5)
  const five =
    acid === 'acetic'
      ? vinegarEquivalent(millilitres(amount), vinegarStrength)
      : vinegarForCitric(grams(amount), acid, percent(5))
  const per100g = yarn === undefined ? undefined : perHundredGrams(five, grams(yarn))
  if (bath === undefined) return { ...alkalinity, per100g }
  const whole = millilitres(bath * 1000)
  const acids =
    acid === 'acetic'
      ? { acetic: aceticInBath(millilitres(amount), vinegarStrength, whole) }
      : { citric: citricInBath(grams(amount), acid, whole) }
  return { ...alkalinity, acids, per100g, perLitre: five / bath }
}

export function useAcidFields({ weightUnits, weight, volumeUnits, volume, usual }: Studio) {
  return useMeasures<AcidKey>('acid', {
    vinegar: {
      label: 'Vinegar',
      words: 'the vinegar',
      keptAs: 'mL',
      units: volumeUnits,
      unit: volume,
      least: 0,
    },
    citric: {
      label: 'Citric acid',
      words: 'the citric acid',
      keptAs: 'g',
      units: weightUnits,
      unit: weight,
      least: 0,
    },
    strength: {
      label: 'Strength',
      words: 'the strength',
      keptAs: '%',
      amount: usual.acidStrengthPercent,
      variable: 'acidStrength',
    },
    water: {
      label: 'Water',
      words: 'the water',
      keptAs: 'mg/L',
      units: ['mg/L', 'ppm', '°dH', '°fH', '°e', 'meq/L'],
      amount: usual.waterAlkalinity,
      variable: 'tapAlkalinity',
      blank: 'blank: not recorded, never zero',
    },
    bath: {
      label: 'Bath',
      words: 'the bath',
      keptAs: 'L',
      units: ['L', 'mL', 'quart (US)', 'gallon (US)', 'pint (imperial)', 'gallon (imperial)'],
      variable: 'bathVolume',
    },
    yarn: {
      label: 'Dry yarn',
      words: 'the dry yarn',
      keptAs: 'g',
      units: weightUnits,
      unit: weight,
      variable: 'fibreMass',
      blank: 'only for “per 100 g”',
    },
  })
}
