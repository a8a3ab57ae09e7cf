import fc from 'fast-check'
import { expect, test } from 'vitest'
import { conditionsSchema } from '#api/contract/conditions.ts'
import { faultsOf } from '#api/contract/faults.ts'

const read = (given: unknown, extraKeys: readonly string[] = []) => conditionsSchema(extraKeys).parse(given)

function faults(given: unknown, extraKeys: readonly string[] = []) {
  const parsed = conditionsSchema(extraKeys).safeParse(given, { reportInput: true })
  return parsed.success ? [] : faultsOf(parsed.error)
}

test('a decimal comma is a number, blank is left out, null stays', () => {
  expect(read({ steamTime: '12,5', hold: '', rinseTemp: null, depth: 1 })).toEqual({
    steamTime: 12.5,
    rinseTemp: null,
    depth: 1,
  })
})

test('zero is a value, not a blank', () => {
  expect(read({ steamTime: 0, acid: '0' })).toEqual({ steamTime: 0, acid: 0 })
})

test('an entered amount is kept beside what it counts as', () => {
  const quarterHour = { amount: '1/4', unit: 'h' }
  expect(read({ steamTime: { entered: quarterHour } })).toEqual({
    steamTime: { entered: quarterHour, value: 15 },
  })
})

test('what came out goes in again unchanged', () => {
  const once = read({ steamTime: { entered: { amount: '½', unit: 'h' } }, hold: 30, depth: null })
  expect(read(once)).toEqual(once)
})

test('an amount per 100 g takes the fibre weight that stands beside it', () => {
  // A quarter US cup (59.147 mL, NIST) of 5 % vinegar on 4 oz (113.398 g) of yarn.
  const kept = read({
    fibreMass: { entered: { amount: 4, unit: 'oz' } },
    acid: { entered: { amount: '¼', unit: 'cup (US)' } },
  })
  expect(kept.acid).toMatchObject({ value: expect.closeTo((100 * 59.147059125) / 113.3980925, 9) })
})

test('vinegar of another strength counts as vinegar of 5 %', () => {
  const acid = { entered: { amount: 30, unit: 'mL per 100 g', strengthPercent: 10 } }
  expect(read({ acid }).acid).toMatchObject({ value: 60 })
  const plain = { entered: { amount: 30, unit: 'mL per 100 g' } }
  expect(read({ acid: plain, acidStrength: 4 }).acid).toMatchObject({ value: 24 })
})

test.each([
  ['peakTemp', 190.4, '°F', 88],
  ['altitude', '5 000', 'ft', 1524],
  ['liquorRatio', 30, 'L/kg', 30],
  ['tapAlkalinity', 3, 'meq/L', 150.12],
  ['washTime', '0,5', 'h', 30],
  ['lightDays', 4, 'weeks', 28],
  ['stockVolume', 20, 'drops', 1],
  ['drops', 20, 'drops', 20],
  ['citric', 2, 'g per 100 g', 2],
] as const)('%s of %s %s counts as %s', (key, amount, unit, value) => {
  const given = { [key]: { entered: { amount, unit } } }
  expect(read(given)[key]).toMatchObject({ value: expect.closeTo(value, 9) })
})

test('an impossible value is refused at its place, with range, unit and what was probably meant', () => {
  expect(faults({ steamTime: 3500, pH: 15 })).toEqual([
    { pointer: '#/steamTime', detail: 'Steam time 3500 min is outside 0–480 min. Did you mean 35?' },
    { pointer: '#/pH', detail: 'pH with the yarn in 15 is outside 0–14.' },
  ])
  expect(faults({ steamTime: { entered: { amount: 60, unit: 'h' } } })).toEqual([
    {
      pointer: '#/steamTime/entered/amount',
      detail: 'Steam time 3600 min is outside 0–480 min. Did you mean 36?',
    },
  ])
})

test('what cannot be read or counted is refused at its place', () => {
  expect(faults({ hold: 'long' })).toEqual([
    { pointer: '#/hold', detail: 'Hold is a number in min, such as 12 or 12,5.' },
  ])
  expect(faults({ acid: { entered: { amount: 'a pinch', unit: 'mL' } } })[0]).toEqual({
    pointer: '#/acid/entered/amount',
    detail: '“a pinch” cannot be counted. Weigh it, or level it off in a spoon.',
  })
  expect(faults({ bathVolume: { entered: { amount: 2, unit: 'cup' } } })[0]?.detail).toContain(
    'more than one cup',
  )
  expect(faults({ acid: { entered: { amount: 2, unit: 'tbsp (US)' } } })[0]).toEqual({
    pointer: '#/acid/entered/unit',
    detail:
      'Vinegar is counted on the fibre, in mL per 100 g. Give the fibre weight beside it, or write “tbsp (US) per 100 g”.',
  })
  expect(faults({ hold: { entered: { amount: 2, unit: 'km' } } })[0]).toEqual({
    pointer: '#/hold/entered/unit',
    detail: 'Hold is kept in min; “km” cannot be counted in it.',
  })
  expect(
    faults({ acid: { entered: { amount: 2, unit: 'mL per 100 g', strengthPercent: 60 } } })[0]?.pointer,
  ).toBe('#/acid/entered/strengthPercent')
})

test('an unknown key is refused unless it is a factor of the trial', () => {
  expect(faults({ moon: 'full' })).toEqual([
    { pointer: '#/moon', detail: 'No variable of this name is known here.' },
  ])
  expect(read({ moon: 'full', order: 3 }, ['moon', 'order'])).toEqual({ moon: 'full', order: 3 })
  expect(faults(JSON.parse('{ "__proto__": 1, "toString": 2 }')).map((it) => it.pointer)).toContain(
    '#/toString',
  )
})

test('a pressure vessel is a yes or a no', () => {
  expect(read({ pressureVessel: true })).toEqual({ pressureVessel: true })
  expect(faults({ pressureVessel: 'yes' })).toHaveLength(1)
})

test.each([
  [[]],
  ['text'],
  [null],
  [7],
  [{ hold: [] }],
  [{ hold: { value: 3 } }],
  [{ hold: { entered: null } }],
])('%j is no set of conditions', (given) => {
  expect(faults(given).length).toBeGreaterThan(0)
})

test('whatever is sent is kept or refused, never thrown', () => {
  const keys = fc.constantFrom('acid', 'hold', 'drops', 'moon', '__proto__', 'fibreMass', 'L')
  const entered = fc.record({
    amount: fc.oneof(fc.double(), fc.string()),
    unit: fc.constantFrom('g', 'mL', 'h', '%', '°F', ''),
  })
  const value = fc.oneof(
    fc.double(),
    fc.string(),
    fc.constant(null),
    fc.boolean(),
    fc.record({ entered }),
    fc.jsonValue(),
  )
  fc.assert(
    fc.property(fc.dictionary(keys, value), (given) => {
      expect(() => faults(given, ['moon'])).not.toThrow()
    }),
  )
})
