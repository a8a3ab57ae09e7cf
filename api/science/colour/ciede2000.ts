import { chroma, hueOf, type Lab } from './lab.ts'

const radians = Math.PI / 180
const twentyFiveTo7 = 25 ** 7

/** Weights for unusual viewing; 1 each unless said. Some textile laboratories take `kL` 2. */
export type Ciede2000Weights = { readonly kL?: number; readonly kC?: number; readonly kH?: number }

/**
 * How different two colours look: ΔE00. Symmetric, 0 for equal colours. Below 0.5 is handling noise, 1 a careful
 * eye sees side by side, above 6 it is another colour. Take means of L*, a*, b* first, then this.
 *
 * Source: ISO/CIE 11664-6; the rules for hues from Sharma, Wu and Dalal (2005), Color Res. Appl. 30, 21–30.
 *
 * @example
 * ciede2000({ L: 50, a: 2.6772, b: -79.7751 }, { L: 50, a: 0, b: -82.7485 }) // 2.0425
 */
export function ciede2000(
  reference: Lab,
  sample: Lab,
  { kL = 1, kC = 1, kH = 1 }: Ciede2000Weights = {},
): number {
  const meanC = (chroma(reference) + chroma(sample)) / 2
  const stretch = 1 + 0.5 * (1 - Math.sqrt(meanC ** 7 / (meanC ** 7 + twentyFiveTo7)))
  const a1 = stretch * reference.a
  const a2 = stretch * sample.a
  const c1 = Math.sqrt(a1 * a1 + reference.b * reference.b)
  const c2 = Math.sqrt(a2 * a2 + sample.b * sample.b)
  const h1 = hueOf(a1, reference.b)
  const h2 = hueOf(a2, sample.b)

  const turn = shortTurn(h1, h2, c1 * c2)
  const dL = sample.L - reference.L
  const dC = c2 - c1
  const dH = 2 * Math.sqrt(c1 * c2) * Math.sin((turn / 2) * radians)

  const meanL = (reference.L + sample.L) / 2
  const meanC2 = (c1 + c2) / 2
  const h = meanHue(h1, h2, c1 * c2)
  const t =
    1 -
    0.17 * Math.cos((h - 30) * radians) +
    0.24 * Math.cos(2 * h * radians) +
    0.32 * Math.cos((3 * h + 6) * radians) -
    0.2 * Math.cos((4 * h - 63) * radians)
  const sL = 1 + (0.015 * (meanL - 50) ** 2) / Math.sqrt(20 + (meanL - 50) ** 2)
  const sC = 1 + 0.045 * meanC2
  const sH = 1 + 0.015 * meanC2 * t
  // The hue here does not wrap: just above 0 the blue rotation is nothing, just below 360 it is a trace.
  const rotation = 30 * Math.exp(-(((h - 275) / 25) ** 2))
  const rC = 2 * Math.sqrt(meanC2 ** 7 / (meanC2 ** 7 + twentyFiveTo7))
  const rT = -Math.sin(2 * rotation * radians) * rC

  const l = dL / (kL * sL)
  const c = dC / (kC * sC)
  const hueTerm = dH / (kH * sH)
  // In the blues the cross term can take a rounding's worth more than there is.
  return Math.sqrt(Math.max(0, l * l + c * c + hueTerm * hueTerm + rT * c * hueTerm))
}

/** From one hue to the other the short way, −180 to 180; 0 where one of them is a grey. */
function shortTurn(h1: number, h2: number, product: number): number {
  if (product === 0) return 0
  const turn = h2 - h1
  if (turn > 180) return turn - 360
  if (turn < -180) return turn + 360
  return turn
}

/** The hue between the two, the short way, 0 to 360; a grey leaves it to the other. */
function meanHue(h1: number, h2: number, product: number): number {
  const sum = h1 + h2
  if (product === 0) return sum
  if (Math.abs(h1 - h2) <= 180) return sum / 2
  return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2
}
