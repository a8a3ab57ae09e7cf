import { ciede2000 } from './ciede2000.ts'
import { spectralWeights } from './spectral-weights.ts'
import { type Spectrum, spectrumToXyz } from './spectrum-to-lab.ts'
import type { Illuminant, Observer } from './tristimulus-weights.ts'
import type { Xyz } from './white-points.ts'
import { xyzToLab } from './xyz-to-lab.ts'

/** ΔE00 of the pair in daylight and in lamp light, and what the lamp adds to it. */
export type Metamerism = { readonly underD65: number; readonly underA: number; readonly index: number }

/**
 * Whether two yarns that match in daylight part in lamp light. `index` is ΔE00 under A after the sample's values
 * are scaled by what it misses of the standard under D65, so that a pair that does not quite match is not blamed
 * twice; it is 0 for equal spectra and equals `underA` for a perfect daylight match.
 *
 * Source: CIE 15, special metamerism index for a change of illuminant, with multiplicative correction.
 *
 * @throws RangeError as `spectralWeights`, or when the standard or sample is perfectly black
 *
 * @example
 * metamerism({ wavelengths: [400, 420], reflectance: [0.5, 0.5] }, { wavelengths: [400, 420], reflectance: [0.4, 0.4] }).index // 0
 */
export function metamerism(
  standard: Spectrum,
  sample: Spectrum,
  { observer = 10 }: { observer?: Observer } = {},
): Metamerism {
  const day = under('D65', standard, sample, observer)
  const lamp = under('A', standard, sample, observer)
  if (!day.sample.every((value) => value > 0) || !day.standard.every((value) => value > 0))
    throw new RangeError('A perfectly black yarn has no metamerism.')
  const corrected = lamp.sample.map((value, i) => (value * day.standard[i]!) / day.sample[i]!)
  return {
    underD65: difference(day.standard, day.sample, day.white),
    underA: difference(lamp.standard, lamp.sample, lamp.white),
    index: difference(lamp.standard, [corrected[0]!, corrected[1]!, corrected[2]!], lamp.white),
  }
}

function under(illuminant: Illuminant, standard: Spectrum, sample: Spectrum, observer: Observer) {
  const viewing = { illuminant, observer }
  const weights = spectralWeights(standard.wavelengths, viewing)
  return {
    white: weights.white,
    standard: spectrumToXyz(standard.reflectance, weights),
    sample: spectrumToXyz(sample.reflectance, spectralWeights(sample.wavelengths, viewing)),
  }
}

function difference(standard: Xyz, sample: Xyz, white: Xyz): number {
  return ciede2000(xyzToLab(standard, white), xyzToLab(sample, white))
}
