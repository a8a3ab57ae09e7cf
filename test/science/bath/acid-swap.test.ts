import { expect, test } from 'vitest'
import {
  citricForVinegar,
  citricMilliequivalents,
  vinegarForCitric,
  vinegarMilliequivalents,
} from '#api/science/bath/acid-swap.ts'
import { grams, millilitres, percent } from '#api/science/units.ts'
import reference from '../../reference/colour/units-acids.json' with { type: 'json' }

const { acids } = reference

test('vinegar holds the acid of its label, at each strength of the reference', () => {
  const inOneMillilitre = (strength: number) => vinegarMilliequivalents(millilitres(1), percent(strength))
  expect(inOneMillilitre(5)).toBeCloseTo(acids.vinegar_5_percent.mol_per_L_if_m_v, 5)
  expect(inOneMillilitre(4)).toBeCloseTo(acids.vinegar_other['4 %'], 5)
  expect(inOneMillilitre(6)).toBeCloseTo(acids.vinegar_other['6 %'], 5)
  expect(inOneMillilitre(10)).toBeCloseTo(acids.vinegar_other['10 %'], 5)
})

test('a gram of citric acid carries 15.6 meq, as much as 18.8 mL of 5 % vinegar; the monohydrate 17.1 mL', () => {
  // By hand from the molar masses: 3000 ÷ 192.124 = 15.615; 3000 ÷ 210.139 = 14.276; vinegar 0.8326 meq/mL.
  expect(citricMilliequivalents(grams(1), 'citric')).toBeCloseTo(3000 / acids.citric_anhydrous.molar_mass, 10)
  expect(vinegarForCitric(grams(1), 'citric', percent(5)).toFixed(1)).toBe('18.8')
  expect(vinegarForCitric(grams(1), 'citric-monohydrate', percent(5)).toFixed(1)).toBe('17.1')
})

test('swapping there and back changes nothing', () => {
  for (const kind of ['citric', 'citric-monohydrate'] as const) {
    const weight = citricForVinegar(millilitres(60), percent(6), kind)
    expect(vinegarForCitric(weight, kind, percent(6))).toBeCloseTo(60, 10)
  }
  expect(() => vinegarForCitric(grams(1), 'citric', percent(0))).toThrow(RangeError)
})
