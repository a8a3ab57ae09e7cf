import { expect, test } from 'vitest'
import { kitchenUnitCalled, unitFault } from '#api/science/recipe/kitchen-unit-called.ts'
import { kitchenUnits } from '#api/science/recipe/kitchen-units.ts'

test.each(kitchenUnits)('$name is understood by its own name', (unit) => {
  expect(kitchenUnitCalled(unit.name)).toEqual({ kind: 'unit', unit })
  expect(kitchenUnitCalled(unit.name.toUpperCase())).toEqual({ kind: 'unit', unit })
})

test.each([
  ['ml', 'mL'],
  ['Millilitres', 'mL'],
  ['Liters', 'L'],
  ['Tablespoons (U.S.)', 'tbsp (US)'],
  ['us_cup', 'cup (US)'],
  ['cups, US label', 'cup (US label)'],
  ['fluid ounces (imperial)', 'fl oz (imperial)'],
  ['fl. oz (UK)', 'fl oz (imperial)'],
  ['tbsp (AU)', 'tbsp (Australian)'],
  ['Australian cup', 'cup (metric)'],
  ['old imperial tablespoon', 'tbsp (old imperial)'],
  ['imperial_old teaspoon', 'tsp (old imperial)'],
  ['dessertspoons', 'dessertspoon (metric)'],
  ['US gal.', 'gallon (US)'],
  ['lbs', 'lb'],
  ['ounces', 'oz'],
  ['kilos', 'kg'],
])('“%s” is %s', (text, name) => {
  expect(kitchenUnitCalled(text)).toMatchObject({ kind: 'unit', unit: { name } })
})

test('a bare cup is several cups, and nothing is guessed', () => {
  const called = kitchenUnitCalled('cup')
  expect(called.kind === 'several' && called.units.map((it) => it.size)).toEqual([
    236.5882365, 240, 250, 284.130625,
  ])
  expect(unitFault('cup', 'volume')).toBe(
    'There is more than one cup. Write cup (US), cup (US label), cup (metric) or cup (imperial).',
  )
})

test.each(['', '  ', 'g cup', '100 g', 'mL/g', 'constructor', '__proto__', 'bucket', 'US', '%'])(
  '“%s” is no unit of the kitchen',
  (text) => {
    expect(kitchenUnitCalled(text)).toEqual({ kind: 'unknown' })
  },
)

test('a weight where a volume belongs is said so', () => {
  expect(unitFault('oz', 'volume')).toBe(
    'oz is a weight; this is measured by volume, for example in mL, tbsp (metric) or cup (US).',
  )
  expect(unitFault('mL', 'mass')).toBe('mL is a volume; this is weighed, for example in g, oz or lb.')
  expect(unitFault('bucket', 'mass')).toBe(
    '“bucket” is not a unit that is known here. Write for example g, oz or lb.',
  )
  expect(unitFault('kg', 'mass')).toBeUndefined()
})
