import { describe, expect, test } from 'vitest'
import { cielabDifference } from '#api/science/colour/cielab-difference.ts'
import { spectralWeights } from '#api/science/colour/spectral-weights.ts'
import { spectrumToLab, spectrumToXyz } from '#api/science/colour/spectrum-to-lab.ts'
import { xyzToLab } from '#api/science/colour/xyz-to-lab.ts'
import checks from '#test/reference/colour/spectra-checks.json' with { type: 'json' }
import { labOf } from '#test/support/lab-of.ts'

const viewings = [
  ['D65/10deg', { illuminant: 'D65', observer: 10 }],
  ['D65/2deg', { illuminant: 'D65', observer: 2 }],
  ['D50/2deg', { illuminant: 'D50', observer: 2 }],
  ['A/10deg', { illuminant: 'A', observer: 10 }],
] as const

const samples = checks.sets.flatMap(({ range_nm: [first = 0, last = 0], step, samples }) => {
  const wavelengths = Array.from({ length: (last - first) / step + 1 }, (_, i) => first + i * step)
  return samples.map((sample) => ({ title: `${sample.name}, ${first}–${last} nm`, wavelengths, ...sample }))
})

// A second program agrees within 0.0011 ΔE76 on 380–730 nm and 0.0042 on 400–700 nm (the file's note).
describe('spectra of the reference file', () => {
  test.each(samples)('$title', ({ wavelengths, R, expected }) => {
    for (const [key, viewing] of viewings) {
      const weights = spectralWeights(wavelengths, viewing)
      const xyz = spectrumToXyz(R, weights)
      const { XYZ, Lab } = expected[key]
      for (const [i, value] of XYZ.entries()) expect(Math.abs(xyz[i]! - value)).toBeLessThanOrEqual(5e-4)
      const lab = spectrumToLab({ wavelengths, reflectance: R }, viewing)
      expect(lab).toEqual(xyzToLab(xyz, weights.white))
      for (const [i, axis] of (['L', 'a', 'b'] as const).entries())
        expect(Math.abs(lab[axis] - Lab[i]!)).toBeLessThanOrEqual(checks.tolerance.Lab)
    }
  })
})

// Summing the 10 nm tables straight is another method; the file prints what it gives.
test('weights are used and not the straight sum, which is up to 0.09 away', () => {
  const apart = samples.flatMap(({ wavelengths, R, expected }) =>
    viewings.map(([key, viewing]) => {
      const lab = spectrumToLab({ wavelengths, reflectance: R }, viewing)
      return cielabDifference(labOf(expected[key].Lab_plain_10nm_sum), lab).dE76
    }),
  )
  const { '380-730 max': far, '400-700 max': abridged } = checks.agreement.methods_differ_dE76
  expect(Math.max(...apart)).toBeLessThanOrEqual(Math.max(far, abridged) + checks.tolerance.Lab)
  expect(Math.max(...apart)).toBeGreaterThan(0.05)
})

// No published case for 20 nm: every second value of a 10 nm spectrum must come near what the whole one gives.
// The bound is the reference's own for two honest ways of summing the same spectrum, doubled.
test('read every 20 nm, the same yarns are within 0.2 of what they are every 10 nm', () => {
  for (const { wavelengths, R, expected } of samples) {
    const second = (_: number, i: number) => i % 2 === 0
    const lab = spectrumToLab({ wavelengths: wavelengths.filter(second), reflectance: R.filter(second) })
    expect(cielabDifference(labOf(expected['D65/10deg'].Lab), lab).dE76).toBeLessThan(0.2)
  }
})

test('a spectrum that is a cubic is not changed by reading it every 20 nm', () => {
  const cubic = (nm: number) => 0.4 + 0.2 * ((nm - 570) / 210) + 0.1 * ((nm - 570) / 210) ** 3
  const every = (step: number) => Array.from({ length: 420 / step + 1 }, (_, i) => 360 + i * step)
  const [fine, coarse] = [10, 20].map((step) => {
    const wavelengths = every(step)
    return spectrumToLab({ wavelengths, reflectance: wavelengths.map(cubic) })
  })
  // The first and last interval are quadratic, where the eye sees next to nothing.
  expect(cielabDifference(fine!, coarse!).dE76).toBeLessThan(1e-4)
})

test('a reflectance too few is refused', () => {
  expect(() => spectrumToLab({ wavelengths: [400, 410], reflectance: [0.5] })).toThrow(RangeError)
})
