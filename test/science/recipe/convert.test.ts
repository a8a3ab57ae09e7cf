import fc from 'fast-check'
import { expect, test } from 'vitest'
import { convert, kindOfUnit } from '#api/science/recipe/convert.ts'

// Kitchen rates as published in craft guidance, worked out from NIST Handbook 44 volumes.
test.each([
  [1, 'cup (US) per lb', 'mL per 100 g', 52.2, 1],
  [0.25, 'cup (US) per quart (US)', 'mL/L', 62.5, 6],
  [2 / 6, 'tbsp (US) per cup (US)', 'mL/L', 20.8, 1],
  [2, 'g per 100 g', '% owf', 2, 12],
  [30, 'L/kg', 'mL/g', 30, 12],
  [1, 'g per 100 mL', '% w/v', 1, 12],
  [1.5, 'h', 'min', 90, 12],
  [45, 's', 'min', 0.75, 12],
  [2, 'weeks', 'd', 14, 12],
  [212, '°F', '°C', 100, 9],
  [32, '°F', '°C', 0, 9],
  [0, '°C', '°F', 32, 9],
  // A rate has no zero of its own: 1.8 °F a minute is 1 °C a minute.
  [1.8, '°F/min', '°C/min', 1, 12],
  [5000, 'ft', 'm', 1524, 9],
  [12, 'in', 'cm', 30.48, 9],
  [80, 'klx', 'lx', 80_000, 9],
  [2500, 'klx·h', 'Mlx·h', 2.5, 12],
  [9, 'N', 'gf', 918, 0],
  [3, 'meq/L', 'mg/L', 150.12, 6],
  [5, '%', '% w/v', 5, 12],
])('%d %s is, in %s, %d', (amount, from, to, wanted, digits) => {
  expect(convert(amount, from, to)).toBeCloseTo(wanted, digits)
})

test('what does not measure the same thing is not converted', () => {
  expect(convert(1, 'g', 'mL')).toBeUndefined()
  expect(convert(1, 'cup', 'mL')).toBeUndefined()
  expect(convert(1, 'mL/g/min', 'mL/g')).toBeUndefined()
  expect(convert(1, 'mL per 0 g', 'mL/g')).toBeUndefined()
  expect(convert(1, 'furlong', 'm')).toBeUndefined()
  expect(convert(1e308, 'kg', 'mg')).toBeUndefined()
})

test('a unit is known by what it measures', () => {
  expect(kindOfUnit('tbsp (metric)')).toBe('volume')
  expect(kindOfUnit('tbsp (metric) per 10 L')).toBe('volume/volume')
  expect(kindOfUnit('toString')).toBeUndefined()
})

test('there and back is where one began', () => {
  const pairs = fc.constantFrom<[string, string]>(
    ['°F', '°C'],
    ['h', 'min'],
    ['cup (US) per lb', 'mL per 100 g'],
    ['ft', 'm'],
    ['% w/v', 'g/L'],
    ['% owf', 'oz per lb'],
  )
  fc.assert(
    fc.property(fc.double({ min: -1e4, max: 1e4, noNaN: true }), pairs, (amount, [from, to]) => {
      const there = convert(amount, from, to)
      const back = there === undefined ? undefined : convert(there, to, from)
      expect(back).toBeCloseTo(amount, 8)
    }),
  )
})
