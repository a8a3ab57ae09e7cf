import { pairsIn } from './lab-triples.ts'

/**
 * ΔE*ab of many pairs given as triples. For one pair: `cielabDifference`.
 *
 * Source: ISO/CIE 11664-4.
 *
 * @throws RangeError when the two rows differ in length
 *
 * @example
 * [...cie76All(Float64Array.of(50, 3, 4), Float64Array.of(50, 6, 8))] // [5]
 */
export function cie76All(reference: Float64Array, sample: Float64Array): Float64Array {
  const differences = new Float64Array(pairsIn(reference, sample))
  for (let pair = 0, at = 0; pair < differences.length; pair++, at += 3) {
    const dL = sample[at]! - reference[at]!
    const da = sample[at + 1]! - reference[at + 1]!
    const db = sample[at + 2]! - reference[at + 2]!
    differences[pair] = Math.sqrt(dL * dL + da * da + db * db)
  }
  return differences
}
