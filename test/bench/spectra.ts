import { spectralWeights } from '#api/science/colour/spectral-weights.ts'
import { spectrumToLab, spectrumToXyz } from '#api/science/colour/spectrum-to-lab.ts'
import { xyzToLab } from '#api/science/colour/xyz-to-lab.ts'
import { evenNumbers } from './sample-colours.ts'
import { printRates, sideBySide } from './side-by-side.ts'

/** Spectra of 31 values, 400–700 nm, to L*a*b* under D65/10°: weights made once, and made anew each time. */
export function benchSpectra(): void {
  const next = evenNumbers()
  const wavelengths = Array.from({ length: 31 }, (_, i) => 400 + 10 * i)
  const spectra = Array.from({ length: 20_000 }, () => wavelengths.map(() => next()))
  const weights = spectralWeights(wavelengths)
  const few = spectra.slice(0, 1000)
  const sum = (list: readonly number[][], lightness: (reflectance: number[]) => number) => () =>
    list.reduce((total, reflectance) => total + lightness(reflectance), 0)
  const once = (reflectance: number[]) => xyzToLab(spectrumToXyz(reflectance, weights), weights.white).L
  const anew = (reflectance: number[]) => spectrumToLab({ wavelengths, reflectance }).L
  for (const rate of sideBySide([
    { name: 'weights once, spectrumToXyz, xyzToLab', things: spectra.length, work: sum(spectra, once) },
    { name: 'spectrumToLab', things: few.length, work: sum(few, anew) },
  ]))
    printRates('spectra', [rate])
}
