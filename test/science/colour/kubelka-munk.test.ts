import { expect, test } from 'vitest'
import { absorptionOverScattering, reflectanceOf } from '#api/science/colour/kubelka-munk.ts'
import reference from '#test/reference/colour/strength-exhaustion.json' with { type: 'json' }

// Text-book identity, checked by hand for 0.5, 0.2 and 0.1 (the file's note).
test.each(reference.ks)('a reflectance of $R is a K/S of $KS', ({ R, KS }) => {
  expect(Math.abs(absorptionOverScattering(R) - KS)).toBeLessThanOrEqual(reference.tolerance)
})

test.each(reference.inverse)('a K/S of $KS is a reflectance of $R', ({ KS, R }) => {
  expect(Math.abs(reflectanceOf(KS) - R)).toBeLessThanOrEqual(reference.tolerance)
})

test('a pale shade is read against its undyed yarn: 0.45 on 0.78 leaves 0.305', () => {
  const { R_dyed, R_undyed, KS_net } = reference.substrate_corrected.example
  expect(absorptionOverScattering(R_dyed) - absorptionOverScattering(R_undyed)).toBeCloseTo(KS_net, 5)
})

test('there and back for every reflectance, however small', () => {
  for (const R of [1, 0.999, 0.5, 0.01, 1e-6, 1e-9]) {
    expect(reflectanceOf(absorptionOverScattering(R)) / R).toBeCloseTo(1, 6)
  }
})

test('a perfect white absorbs nothing, a perfect black without end, more than all cannot be', () => {
  expect(absorptionOverScattering(1)).toBe(0)
  expect(absorptionOverScattering(0)).toBe(Number.POSITIVE_INFINITY)
  for (const wrong of [-0.1, 1.1, Number.NaN])
    expect(() => absorptionOverScattering(wrong)).toThrow(RangeError)
  for (const wrong of [-0.1, Number.NaN]) expect(() => reflectanceOf(wrong)).toThrow(RangeError)
})
