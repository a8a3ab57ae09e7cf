import { expect, test } from 'vitest'
import { perHundredGrams, vinegarEquivalent } from '#api/science/bath/vinegar-equivalent.ts'
import { toGrams, toMillilitres } from '#api/science/recipe/to-millilitres.ts'
import { grams, millilitres, percent } from '#api/science/units.ts'
import reference from '../../reference/colour/units-acids.json' with { type: 'json' }

test('100 mL of 10 % vinegar is 200 mL of 5 %, as in the reference', () => {
  const wanted = reference.arithmetic_examples.find(({ q }) => q.includes('100 mL of 10 % vinegar'))
  expect(vinegarEquivalent(millilitres(100), percent(10))).toBeCloseTo(wanted?.a ?? Number.NaN, 12)
})

test('one US cup to the pound is 52.2 mL for 100 g', () => {
  // From NIST volumes and the international pound: 236.588 ÷ 453.592 × 100.
  expect(perHundredGrams(toMillilitres(1, 'cup (US)'), toGrams(1, 'lb'))).toBeCloseTo(52.2, 1)
  expect(() => perHundredGrams(1, grams(0))).toThrow(RangeError)
})
