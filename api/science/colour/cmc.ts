import { hueDifference } from './hue-difference.ts'
import { hueOf, type Lab } from './lab.ts'
import { pairsIn } from './lab-triples.ts'

/** How much lightness and chroma may differ against hue. Textiles: 2:1, judged by eye as acceptable; 1:1 as seen. */
export type CmcWeights = { readonly l?: number; readonly c?: number }

const radians = Math.PI / 180

/**
 * ΔE CMC(l:c), 2:1 unless said. Not symmetric: the weights come from the reference, which is the colour before.
 *
 * Source: ISO 105-J03.
 *
 * @throws RangeError when l or c is not above 0
 *
 * @example
 * cmc({ L: 41.2, a: 55.3, b: 22.9 }, { L: 44, a: 49.9, b: 27.2 }) // 4.281
 */
export function cmc(reference: Lab, sample: Lab, { l = 2, c = 1 }: CmcWeights = {}): number {
  checkWeights(l, c)
  return weighed(reference.L, reference.a, reference.b, sample.L, sample.a, sample.b, l, c)
}

/**
 * The same for many pairs given as triples.
 *
 * @throws RangeError when the two rows differ in length, or l or c is not above 0
 *
 * @example
 * [...cmcAll(Float64Array.of(41.2, 55.3, 22.9), Float64Array.of(44, 49.9, 27.2), { l: 1 })] // [4.9479]
 */
export function cmcAll(
  reference: Float64Array,
  sample: Float64Array,
  { l = 2, c = 1 }: CmcWeights = {},
): Float64Array {
  checkWeights(l, c)
  const [r, s] = [reference, sample]
  const differences = new Float64Array(pairsIn(r, s))
  for (let pair = 0, at = 0; pair < differences.length; pair++, at += 3) {
    differences[pair] = weighed(r[at]!, r[at + 1]!, r[at + 2]!, s[at]!, s[at + 1]!, s[at + 2]!, l, c)
  }
  return differences
}

function weighed(
  L1: number,
  a1: number,
  b1: number,
  L2: number,
  a2: number,
  b2: number,
  l: number,
  c: number,
): number {
  const c1 = Math.sqrt(a1 * a1 + b1 * b1)
  const h1 = hueOf(a1, b1)
  const fourth = c1 * c1 * c1 * c1
  const f = Math.sqrt(fourth / (fourth + 1900))
  const t =
    h1 >= 164 && h1 <= 345
      ? 0.56 + Math.abs(0.2 * Math.cos((h1 + 168) * radians))
      : 0.36 + Math.abs(0.4 * Math.cos((h1 + 35) * radians))
  const sL = L1 < 16 ? 0.511 : (0.040975 * L1) / (1 + 0.01765 * L1)
  const sC = (0.0638 * c1) / (1 + 0.0131 * c1) + 0.638
  const sH = sC * (f * t + 1 - f)
  const dL = (L2 - L1) / (l * sL)
  const dC = (Math.sqrt(a2 * a2 + b2 * b2) - c1) / (c * sC)
  const dH = hueDifference(a1, b1, a2, b2) / sH
  return Math.sqrt(dL * dL + dC * dC + dH * dH)
}

function checkWeights(l: number, c: number): void {
  if (!(l > 0 && c > 0)) throw new RangeError('The weights l and c of CMC are above 0.')
}
