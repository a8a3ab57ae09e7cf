import { expect, test } from 'vitest'
import { exhaustion } from '#api/science/bath/exhaustion.ts'
import reference from '../../reference/colour/strength-exhaustion.json' with { type: 'json' }

// Beer–Lambert identities, worked out beside the definition in the reference.
test.each(reference.exhaustion.examples)('$name: $exhaustion_percent % taken up', (it) => {
  const start = { absorbance: it.A_start, dilution: it.dilution_start, volume: it.volume_start_L }
  const end = { absorbance: it.A_end, dilution: it.dilution_end, volume: it.volume_end_L }
  expect(Math.abs(exhaustion(start, end) - it.exhaustion_percent)).toBeLessThan(reference.tolerance)
})

test('a bath that holds more dye than before has given, not taken', () => {
  const bath = (absorbance: number) => ({ absorbance, dilution: 1, volume: 1 })
  expect(exhaustion(bath(0.4), bath(0.5))).toBeCloseTo(-25, 10)
})

test('a bath without dye at the start has no exhaustion', () => {
  const bath = { absorbance: 0, dilution: 1, volume: 1 }
  expect(() => exhaustion(bath, bath)).toThrow(RangeError)
})
