import { expect, test } from 'vitest'
import { relativeStrength } from '#api/science/colour/relative-strength.ts'
import reference from '#test/reference/colour/strength-exhaustion.json' with { type: 'json' }

const { R_standard, R_batch, wavelength_nm, ...printed } = reference.relative_strength

// Ratio of K/S at the absorption maximum and of sums over wavelength (the file's definition and values).
test('a batch of 151 % at 600 nm is 155 % over all', () => {
  const found = relativeStrength(R_standard, R_batch)
  expect(wavelength_nm[found.maximumAt]).toBe(printed.KS_max_wavelength)
  expect(Math.abs(found.atMaximumPercent - printed.strength_at_max_percent)).toBeLessThanOrEqual(1e-4)
  expect(Math.abs(found.overAllPercent - printed.strength_sum_percent)).toBeLessThanOrEqual(1e-4)
})

test('a yarn is as strong as itself, with and without its undyed yarn taken off', () => {
  expect(relativeStrength(R_standard, R_standard)).toMatchObject({
    atMaximumPercent: 100,
    overAllPercent: 100,
  })
  const undyed = R_standard.map(() => 0.8)
  expect(relativeStrength(R_standard, R_standard, { undyed }).overAllPercent).toBe(100)
})

// By hand: K/S of 0.5, 0.2 and 0.1 are 0.25, 1.6 and 4.05; less 0.25 of the undyed they stand 3.8 to 1.35.
test('the undyed yarn is taken off both', () => {
  expect(relativeStrength([0.2], [0.1], { undyed: [0.5] }).atMaximumPercent).toBeCloseTo(
    (100 * 3.8) / 1.35,
    10,
  )
})

test.each([
  ['lists of unequal length', () => relativeStrength([0.2], [0.1, 0.2])],
  ['no wavelengths', () => relativeStrength([], [])],
  ['a reflectance of 0', () => relativeStrength([0], [0.1])],
  ['a standard without dye', () => relativeStrength([0.5], [0.1], { undyed: [0.5] })],
])('%s is refused', (_name, act) => {
  expect(act).toThrow(RangeError)
})
