import fc from 'fast-check'
import { expect, test } from 'vitest'
import { kitchenUnits } from '#api/science/recipe/kitchen-units.ts'
import { toGrams, toMillilitres } from '#api/science/recipe/to-millilitres.ts'

// Published equivalents, to the digits usually printed (NIST Handbook 44; 1 oz = 28.3495 g, 1 lb = 453.592 g).
test.each([
  [1, 'cup (US)', 236.588],
  [1, 'cup (US label)', 240],
  [1, 'cup (metric)', 250],
  [1, 'cup (imperial)', 284.131],
  [1, 'tbsp (US)', 14.787],
  [1, 'tbsp (metric)', 15],
  [1, 'tbsp (Australian)', 20],
  [1, 'tsp (US)', 4.929],
  [1, 'tsp (metric)', 5],
  [1, 'quart (US)', 946.353],
  [1, 'gallon (US)', 3785.412],
  [1, 'gallon (imperial)', 4546.09],
  [1.5, 'L', 1500],
])('%d %s is %d mL', (amount, unit, mL) => {
  expect(toMillilitres(amount, unit)).toBeCloseTo(mL, 3)
})

test('weights come in grams', () => {
  expect(toGrams(1, 'oz')).toBeCloseTo(28.3495, 4)
  expect(toGrams(1, 'lb')).toBeCloseTo(453.592, 3)
  expect(toGrams(2.5, 'kg')).toBe(2500)
})

test('3 US tablespoons are 2.957353 metric ones', () => {
  expect(toMillilitres(3, 'tbsp (US)') / toMillilitres(1, 'tbsp (metric)')).toBeCloseTo(2.957353, 6)
})

test('there and back is where one began', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
      fc.constantFrom(...kitchenUnits),
      (amount, unit) => {
        const convert = unit.kind === 'volume' ? toMillilitres : toGrams
        const back = convert(amount, unit.name) / convert(1, unit.name)
        expect(Math.abs(back - amount)).toBeLessThanOrEqual(1e-12 * amount)
      },
    ),
  )
})

test('an unknown or ambiguous unit, or one of the other kind, is thrown back with its reason', () => {
  expect(() => toMillilitres(1, 'bucket')).toThrow(RangeError)
  expect(() => toMillilitres(1, 'tbsp')).toThrow('There is more than one tbsp.')
  expect(() => toGrams(1, 'cup (US)')).toThrow('cup (US) is a volume')
})
