import type { Lab } from './lab.ts'
import { spectralWeights, type Viewing } from './spectral-weights.ts'
import type { Xyz } from './white-points.ts'
import { xyzToLab } from './xyz-to-lab.ts'

/** A reflectance spectrum: wavelengths in nm, 10 or 20 apart, and for each a reflectance as a fraction 0–1. */
export type Spectrum = { readonly wavelengths: readonly number[]; readonly reflectance: readonly number[] }

/**
 * Tristimulus values of a reflectance, Y of the perfect white 100, by weights made for its wavelengths.
 *
 * @throws RangeError when reflectance and weights differ in length
 *
 * @example
 * spectrumToXyz([0.5, 0.5, 0.5], { x: [20, 40, 30], y: [10, 60, 30], z: [60, 30, 0] }) // [45, 50, 45]
 */
export function spectrumToXyz(
  reflectance: readonly number[],
  weights: { readonly [axis in 'x' | 'y' | 'z']: ArrayLike<number> },
): Xyz {
  const { x, y, z } = weights
  if (reflectance.length !== x.length)
    throw new RangeError(
      `A spectrum has a reflectance for each wavelength: ${x.length} wavelengths, ${reflectance.length} reflectances.`,
    )
  const sums: [number, number, number] = [0, 0, 0]
  for (let i = 0; i < reflectance.length; i++) {
    const r = reflectance[i]!
    sums[0] += x[i]! * r
    sums[1] += y[i]! * r
    sums[2] += z[i]! * r
  }
  return sums
}

/**
 * The colour of a reflectance spectrum. For many spectra of one instrument make `spectralWeights` once and use
 * `spectrumToXyz` with `xyzToLab`.
 *
 * @throws RangeError as `spectralWeights` and `spectrumToXyz`
 *
 * @example
 * spectrumToLab({ wavelengths: [400, 420, 440], reflectance: [0.18, 0.18, 0.18] }) // { L: 49.4961, a: 0, b: 0 }
 */
export function spectrumToLab(spectrum: Spectrum, viewing: Viewing = {}): Lab {
  const weights = spectralWeights(spectrum.wavelengths, viewing)
  return xyzToLab(spectrumToXyz(spectrum.reflectance, weights), weights.white)
}
