import { hueDifference } from './hue-difference.ts'
import type { Lab } from './lab.ts'

/** Sample minus reference. `dE76` is ΔE*ab; `dH` is signed, positive anticlockwise. */
export type CielabDifference = {
  readonly dE76: number
  readonly dL: number
  readonly da: number
  readonly db: number
  readonly dC: number
  readonly dH: number
}

/**
 * How a sample differs from its reference in CIELAB: the length ΔE*ab and its signed parts in lightness, redness,
 * yellowness, chroma and hue.
 *
 * Source: ISO/CIE 11664-4.
 *
 * @example
 * cielabDifference({ L: 50, a: 3, b: 4 }, { L: 52, a: 6, b: 8 }) // { dE76: 5.385165, dL: 2, dC: 5, dH: 0 }
 */
export function cielabDifference(reference: Lab, sample: Lab): CielabDifference {
  const dL = sample.L - reference.L
  const da = sample.a - reference.a
  const db = sample.b - reference.b
  const c1 = Math.sqrt(reference.a * reference.a + reference.b * reference.b)
  const c2 = Math.sqrt(sample.a * sample.a + sample.b * sample.b)
  // (c2² − c1²) ÷ (c2 + c1), written so that close colours keep their digits.
  const dC = c1 + c2 === 0 ? 0 : (da * (reference.a + sample.a) + db * (reference.b + sample.b)) / (c1 + c2)
  const dH = hueDifference(reference.a, reference.b, sample.a, sample.b)
  return { dE76: Math.sqrt(dL * dL + da * da + db * db), dL, da, db, dC, dH }
}
