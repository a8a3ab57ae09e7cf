import fc from 'fast-check'
import { expect, test } from 'vitest'
import { aceticInBath, alkalinityInMoles, citricInBath } from '#api/science/bath/acid-in-bath.ts'
import * as constants from '#api/science/bath/acids.ts'
import { startPh } from '#api/science/bath/start-ph.ts'
import { grams, milligramsPerLitre, millilitres, molesPerLitre, percent } from '#api/science/units.ts'
import reference from '../../reference/colour/units-acids.json' with { type: 'json' }

test('the constants are those of the reference (NIST SRD 46)', () => {
  expect(constants.acetic).toEqual({
    molarMass: reference.acids.acetic.molar_mass,
    pKa: reference.acids.acetic.pKa,
  })
  expect(constants.citric.molarMass).toBe(reference.acids.citric_anhydrous.molar_mass)
  expect(constants.citric.pKa).toEqual(reference.acids.citric_anhydrous.pKa)
  expect(constants.citricMonohydrate.molarMass).toBe(reference.acids.citric_monohydrate.molar_mass)
  expect(constants.carbonic.pKa).toEqual(reference.acids.carbonic.pKa)
  expect(constants.waterPKw).toBe(reference.acids.pKw_25C)
})

// pH_ideal by polynomial roots; pH_with_activity by USGS PHREEQC 3 with Davies activities, within 0.034 of ideal.
test.each(reference.pH_examples)('$name reads $pH_ideal', (it) => {
  const { acetic = 0, citric = 0 } = it.acids_mol_per_L as { acetic?: number; citric?: number }
  const acids = { acetic: molesPerLitre(acetic), citric: molesPerLitre(citric) }
  const { cold } = startPh(acids, molesPerLitre(it.alkalinity_mol_per_L))
  expect(Math.abs(cold - it.pH_ideal)).toBeLessThan(reference.tolerance.pH_ideal)
  expect(Math.abs(cold - it.pH_with_activity)).toBeLessThan(0.036)
})

const vinegar = (mLPerLitre: number, alkalinity: number) =>
  startPh(
    { acetic: aceticInBath(millilitres(mLPerLitre), percent(5), millilitres(1000)) },
    alkalinityInMoles(milligramsPerLitre(alkalinity)),
  )

// Worked out by the trade's notes with pKa 4.76, carbon dioxide driven off: vinegar 5 %, mL/L, by mg/L.
test.each([
  [0, 10, 3.4],
  [0, 20, 3.3],
  [0, 40, 3.1],
  [150, 4, 5.7],
  [150, 10, 4.5],
  [150, 20, 4.1],
  [150, 40, 3.8],
  [300, 10, 5.2],
  [300, 20, 4.5],
  [300, 40, 4.1],
])('in water of %d mg/L, %d mL/L of vinegar heated reads %d', (alkalinity, mL, pH) => {
  expect(Math.abs(vinegar(mL, alkalinity).heated - pH)).toBeLessThan(0.051)
})

test.each([
  [0.5, 4.3],
  [1, 3.4],
  [2, 2.9],
])('in water of 150 mg/L, %d g/L of citric acid heated reads %d', (weight, pH) => {
  const acids = { citric: citricInBath(grams(weight), 'citric', millilitres(1000)) }
  const { heated } = startPh(acids, alkalinityInMoles(milligramsPerLitre(150)))
  expect(Math.abs(heated - pH)).toBeLessThan(0.051)
})

test('cold and heated part where the acid hardly exceeds the alkalinity', () => {
  expect(vinegar(4, 150).cold).toBeCloseTo(5.4, 1)
  expect(vinegar(10, 300).cold).toBeCloseTo(5.1, 1)
  const tooLittle = vinegar(4, 300)
  expect(tooLittle.cold).toBeCloseTo(6.3, 1)
  expect(tooLittle.heated).toBeGreaterThan(11)
})

test('a bath that would read above 7 when heated is not acid, whatever it reads cold', () => {
  expect(vinegar(4, 300).notAcid).toBe(true)
  expect(vinegar(10, 300).notAcid).toBe(false)
})

test('pure water is neutral: half of pKw', () => {
  expect(startPh({}, molesPerLitre(0)).cold).toBeCloseTo(reference.acids.pKw_25C / 2, 6)
})

test('more acid never reads higher', () => {
  const some = fc.double({ min: 0, max: 1, noNaN: true })
  fc.assert(
    fc.property(some, some, fc.double({ min: 0, max: 0.03, noNaN: true }), (one, more, alkalinity) => {
      const before = startPh({ acetic: molesPerLitre(one) }, molesPerLitre(alkalinity))
      const after = startPh({ acetic: molesPerLitre(one + more) }, molesPerLitre(alkalinity))
      expect(after.cold).toBeLessThanOrEqual(before.cold + 1e-9)
      expect(after.heated).toBeLessThanOrEqual(before.heated + 1e-9)
    }),
  )
})

test('an amount below zero or not finite is thrown back', () => {
  expect(() => startPh({ acetic: molesPerLitre(-0.1) }, molesPerLitre(0))).toThrow(RangeError)
  expect(() => startPh({}, molesPerLitre(Infinity))).toThrow(RangeError)
})
