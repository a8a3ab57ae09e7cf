import { expect, test } from 'vitest'
import { aceticInBath, alkalinityInMoles, citricInBath } from '#api/science/bath/acid-in-bath.ts'
import { toMillilitres } from '#api/science/recipe/to-millilitres.ts'
import { grams, milligramsPerLitre, millilitres, percent } from '#api/science/units.ts'
import reference from '../../reference/colour/units-acids.json' with { type: 'json' }

const litres = (count: number) => millilitres(count * 1000)
const referenceBath = (name: string) =>
  reference.pH_examples.find((it) => it.name.startsWith(name))?.acids_mol_per_L

test('vinegar in a bath holds the acetic acid of the reference', () => {
  const inBath = (volume: number, bath: number) => aceticInBath(millilitres(volume), percent(5), litres(bath))
  expect(inBath(250, 10)).toBeCloseTo(referenceBath('1 metric cup')?.acetic ?? Number.NaN, 6)
  expect(inBath(toMillilitres(1, 'tbsp (US)'), 4)).toBeCloseTo(
    referenceBath('1 US tbsp')?.acetic ?? Number.NaN,
    6,
  )
  const gallon = toMillilitres(1, 'gallon (US)') / 1000
  expect(inBath(toMillilitres(1, 'cup (US)'), gallon)).toBeCloseTo(
    referenceBath('1 US cup')?.acetic ?? Number.NaN,
    6,
  )
  // 15 mL of 5 % vinegar: 0.012489 mol.
  expect(inBath(15, 1)).toBeCloseTo(reference.arithmetic_examples[0]?.a ?? Number.NaN, 6)
})

test('citric acid in a bath is that of the reference, with and without its water', () => {
  expect(citricInBath(grams(5), 'citric', litres(5))).toBeCloseTo(
    referenceBath('citric acid 5 g (anhydrous) in 5 L')?.citric ?? Number.NaN,
    6,
  )
  expect(citricInBath(grams(5), 'citric-monohydrate', litres(4))).toBeCloseTo(
    referenceBath('citric monohydrate 5 g in 4 L')?.citric ?? Number.NaN,
    6,
  )
})

test('100 mg/L of calcium carbonate takes up 2 mmol of acid', () => {
  // Calcium carbonate weighs 100.087 g/mol and takes up two: IUPAC atomic weights.
  expect(alkalinityInMoles(milligramsPerLitre(100))).toBeCloseTo(2 / 1000.87, 6)
})

test('no bath, no concentration', () => {
  expect(() => aceticInBath(millilitres(1), percent(5), millilitres(0))).toThrow(RangeError)
})
