import { firstNm, type Illuminant, lastNm, type Observer, tristimulusWeights } from './tristimulus-weights.ts'
import type { Xyz } from './white-points.ts'

/** In whose light and with which observer: D65 and 10° unless said. */
export type Viewing = { readonly illuminant?: Illuminant; readonly observer?: Observer }

/** Weights on the wavelengths of one instrument, and the white they make (Y = 100). */
export type SpectralWeights = {
  readonly x: Float64Array
  readonly y: Float64Array
  readonly z: Float64Array
  readonly white: Xyz
}

/**
 * The tristimulus weights for spectra measured on these wavelengths, 10 or 20 nm apart.
 *
 * What an instrument does not reach is folded into its first and last wavelength. Spectra 20 nm apart are
 * interpolated to 10 nm (cubic, in the first and last interval quadratic), which is the same as sharing the 10 nm
 * weights out; so it is done once for the weights and not for each spectrum.
 *
 * Source: ASTM E308 with weights by ASTM E2022.
 *
 * @throws RangeError when the wavelengths are not ascending, 10 or 20 nm apart and within 360–780
 *
 * @example
 * spectralWeights([360, 380, 400, 420]).white // [94.811, 100, 107.305]
 */
export function spectralWeights(
  wavelengths: readonly number[],
  { illuminant = 'D65', observer = 10 }: Viewing = {},
): SpectralWeights {
  const step = stepOf(wavelengths)
  const first = wavelengths[0] as number
  const last = wavelengths[wavelengths.length - 1] as number
  const table = tristimulusWeights[`${illuminant}/${observer}`]
  const [x, y, z] = [0, 1, 2].map(() => new Float64Array(wavelengths.length)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ]
  const white = [0, 0, 0] as [number, number, number]
  for (let row = 0, nm = firstNm; nm <= lastNm; row++, nm += 10) {
    const [wx, wy, wz] = [table.x[row]!, table.y[row]!, table.z[row]!]
    white[0] += wx
    white[1] += wy
    white[2] += wz
    const place = (Math.min(last, Math.max(first, nm)) - first) / step
    for (const [node, share] of sharesAt(place, wavelengths.length)) {
      x[node]! += wx * share
      y[node]! += wy * share
      z[node]! += wz * share
    }
  }
  return { x, y, z, white }
}

function stepOf(wavelengths: readonly number[]): 10 | 20 {
  const step = (wavelengths[1] ?? Number.NaN) - (wavelengths[0] ?? Number.NaN)
  const even = wavelengths.every((nm, i) => i === 0 || nm - wavelengths[i - 1]! === step)
  if ((step !== 10 && step !== 20) || !even)
    throw new RangeError('A spectrum’s wavelengths ascend in even steps of 10 or 20 nm, two at least.')
  if (wavelengths[0]! < firstNm || wavelengths[wavelengths.length - 1]! > lastNm)
    throw new RangeError(`A spectrum’s wavelengths are within ${firstNm}–${lastNm} nm.`)
  return step
}

/** Lagrange's shares of the nodes around a place between them; a place on a node is all its own. */
function sharesAt(place: number, count: number): [node: number, share: number][] {
  const below = Math.floor(place)
  if (below === place) return [[place, 1]]
  const from = Math.max(0, below - 1)
  const to = Math.min(count - 1, below + 2)
  const shares: [number, number][] = []
  for (let node = from; node <= to; node++) {
    let share = 1
    for (let other = from; other <= to; other++) {
      if (other !== node) share *= (place - other) / (node - other)
    }
    shares.push([node, share])
  }
  return shares
}
