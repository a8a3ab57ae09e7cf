import { hueDifference } from './hue-difference.ts'
import type { Lab } from './lab.ts'
import { pairsIn } from './lab-triples.ts'

/** For yarn and cloth, or for graphic arts: they weigh lightness and chroma differently. */
export type Cie94Use = 'textiles' | 'graphic'

const constants = {
  textiles: { kL: 2, k1: 0.048, k2: 0.014 },
  graphic: { kL: 1, k1: 0.045, k2: 0.015 },
} as const

/**
 * ΔE94. Not symmetric: the weights come from the reference, which is the colour before.
 *
 * Source: CIE 116-1995.
 *
 * @example
 * cie94({ L: 41.2, a: 55.3, b: 22.9 }, { L: 44, a: 49.9, b: 27.2 }) // 3.7377
 */
export function cie94(reference: Lab, sample: Lab, { use = 'textiles' }: { use?: Cie94Use } = {}): number {
  const { kL, k1, k2 } = constants[use]
  return weighed(reference.L, reference.a, reference.b, sample.L, sample.a, sample.b, kL, k1, k2)
}

/**
 * The same for many pairs given as triples.
 *
 * @throws RangeError when the two rows differ in length
 *
 * @example
 * [...cie94All(Float64Array.of(41.2, 55.3, 22.9), Float64Array.of(44, 49.9, 27.2), { use: 'graphic' })] // [4.3822]
 */
export function cie94All(
  reference: Float64Array,
  sample: Float64Array,
  { use = 'textiles' }: { use?: Cie94Use } = {},
): Float64Array {
  const { kL, k1, k2 } = constants[use]
  const [r, s] = [reference, sample]
  const differences = new Float64Array(pairsIn(r, s))
  for (let pair = 0, at = 0; pair < differences.length; pair++, at += 3) {
    const [L1, a1, b1] = [r[at]!, r[at + 1]!, r[at + 2]!]
    differences[pair] = weighed(L1, a1, b1, s[at]!, s[at + 1]!, s[at + 2]!, kL, k1, k2)
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
  kL: number,
  k1: number,
  k2: number,
): number {
  const c1 = Math.sqrt(a1 * a1 + b1 * b1)
  const l = (L2 - L1) / kL
  const c = (Math.sqrt(a2 * a2 + b2 * b2) - c1) / (1 + k1 * c1)
  const h = hueDifference(a1, b1, a2, b2) / (1 + k2 * c1)
  return Math.sqrt(l * l + c * c + h * h)
}
