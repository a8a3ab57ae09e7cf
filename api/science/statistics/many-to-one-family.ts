import { dunnettQuantileOfLoadings, dunnettUpperOfLoadings } from './dunnett.ts'
import { sharedLoadings } from './shared-loadings.ts'
import { studentT, studentTQuantile } from './student-t.ts'

/** How the comparisons of one family with one control are held together. */
export type ControlFamily = {
  readonly adjusted: 'none' | 'dunnett' | 'bonferroni'
  readonly critical: { readonly oneSided: number; readonly twoSided: number }
  /** The adjusted p of a t value: beyond it on its own side, or on both. */
  readonly tail: (t: number, sides: 1 | 2) => number
}

/**
 * Critical values and adjusted p of several comparisons with one control, each given by its direction in a linear model:
 * Dunnett where their correlations are products of loadings, else Bonferroni. `confidence` is that of the whole family.
 *
 * @example
 * controlFamily([Float64Array.of(1, 0), Float64Array.of(0.5, 0.75 ** 0.5)], 20, 0.95) // { adjusted: 'dunnett', critical: { oneSided: 2.03, twoSided: 2.38 } }
 */
export function controlFamily(
  directions: readonly Float64Array[],
  df: number,
  confidence: number,
): ControlFamily {
  const several = directions.length
  const loadings = several > 1 ? sharedLoadings(correlationsOf(directions)) : undefined
  if (loadings) {
    const critical = (sides: 1 | 2) => dunnettQuantileOfLoadings(confidence, { df, loadings, sides })
    return {
      adjusted: 'dunnett',
      critical: { oneSided: critical(1), twoSided: critical(2) },
      tail: (t, sides) => dunnettUpperOfLoadings(t, { df, loadings, sides }),
    }
  }
  const critical = (sides: 1 | 2) => -studentTQuantile((1 - confidence) / sides / several, df)
  return {
    adjusted: several > 1 ? 'bonferroni' : 'none',
    critical: { oneSided: critical(1), twoSided: critical(2) },
    tail: (t, sides) => Math.min(1, several * sides * studentT(t, df).upper),
  }
}

function correlationsOf(directions: readonly Float64Array[]): number[][] {
  const lengths = directions.map((it) => Math.sqrt(product(it, it)))
  return directions.map((a, i) => directions.map((b, k) => product(a, b) / (lengths[i]! * lengths[k]!)))
}

/**
 * The inner product of two vectors of one length.
 *
 * @example
 * product(Float64Array.of(1, 2), Float64Array.of(3, 4)) // 11
 */
export function product(a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let k = 0; k < a.length; k++) sum += a[k]! * b[k]!
  return sum
}
