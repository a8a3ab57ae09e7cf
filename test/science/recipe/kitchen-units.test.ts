import { expect, test } from 'vitest'
import { kitchenUnits } from '#api/science/recipe/kitchen-units.ts'
import reference from '../../reference/colour/units-acids.json' with { type: 'json' }

// US gallon: NIST Handbook 44; US label: 21 CFR 101.9; imperial gallon: UK Units of Measurement Regulations.
// The label set and the old imperial teaspoon are marked as written from memory in the reference.
const systems: Record<string, string> = {
  us: 'US',
  us_label: 'US label',
  metric: 'metric',
  metric_au: 'Australian',
  imperial: 'imperial',
  imperial_old: 'old imperial',
}
const words: Record<string, string> = { teaspoon: 'tsp', tablespoon: 'tbsp', 'fluid ounce': 'fl oz' }

test.each(reference.volumes.rows)('$system $unit holds $mL mL', ({ system, unit, mL }) => {
  const name = `${words[unit] ?? unit} (${systems[system]})`
  expect(kitchenUnits.find((it) => it.name === name)).toMatchObject({ kind: 'volume', size: mL })
})

test.each(reference.masses.rows)('$unit weighs $g g', ({ unit, g }) => {
  const name = unit === 'ounce' ? 'oz' : 'lb'
  expect(kitchenUnits.find((it) => it.name === name)).toMatchObject({ kind: 'mass', size: g })
})

test('no two units share a name', () => {
  expect(new Set(kitchenUnits.map((it) => it.name)).size).toBe(kitchenUnits.length)
})
