import { choleskyInPlace, inverseFromCholesky } from './matrix-cholesky.ts'
import type { RemlFit } from './reml.ts'

/** With fewer degrees of freedom than this no interval has an end that means anything. */
const fewestDf = 0.1

/** How mixed-model contrasts are told: variance relative to the residual one, and Satterthwaite's degrees of freedom. */
export type Satterthwaite = {
  readonly covariance: (a: Float64Array, b: Float64Array) => number
  /** Nothing when the variances are not settled well enough to say. */
  readonly df: (vector: Float64Array) => number | undefined
}

/**
 * Satterthwaite's degrees of freedom 2v² / (g′Ag) of a contrast with variance v, g its slope in the variance
 * parameters and A their covariance by the observed information of REML. The parameters are the logarithm of the
 * residual variance and the ratios to it; at the optimum the result does not hang on that choice.
 *
 * Sources: Giesbrecht and Burns (1985), Biometrics 41, 477–486; Fai and Cornelius (1996), J. Stat. Comput. Simul. 54,
 * 363–378.
 *
 * @example
 * const sums = { width: 2, rank: 1, spans: [[0, 0]], main: 0, rows: 4 }
 * const at = {
 *   inverse: [18], m: [1 / 18, 0, 0, 1.5], j: [1 / 162, 0, 0, 1 / 18],
 *   linear: [1 / 18], traces: [1 / 81], quadratic: [1 / 162],
 * }
 * satterthwaite({ sums, at, ratios: [8.5], residual: 0.5 }).df(Float64Array.of(1)) // 1
 */
export function satterthwaite({ sums, at, ratios, residual }: RemlFit): Satterthwaite {
  const { width, rank, spans, main, rows } = sums
  const count = ratios.length
  const small = width - 1
  const others = small - rank
  const size = count + 1
  const information = new Float64Array(size * size)
  information[0] = rows - rank
  for (let i = 0; i < count; i++) {
    information[i + 1] = information[(i + 1) * size] = at.linear[i]! / residual
    for (let k = 0; k < count; k++)
      information[(i + 1) * size + k + 1] =
        -at.traces[i * count + k]! + (2 * at.quadratic[i * count + k]!) / residual
  }
  const settled = choleskyInPlace(information, size) !== undefined
  const inverse = settled ? inverseFromCholesky(information, size) : information

  const solved = (vector: Float64Array) => {
    const solution = new Float64Array(small)
    for (let a = 0; a < small; a++)
      for (let k = 0; k < rank; k++) solution[a]! += at.inverse[a * small + others + k]! * vector[k]!
    return solution
  }
  const covariance = (a: Float64Array, b: Float64Array) => {
    const solution = solved(b)
    let sum = 0
    for (let k = 0; k < rank; k++) sum += a[k]! * solution[others + k]!
    return sum
  }
  return {
    covariance,
    df: (vector) => {
      if (!settled) return undefined
      const solution = solved(vector)
      const slope = new Float64Array(size)
      for (let k = 0; k < rank; k++) slope[0]! += vector[k]! * solution[others + k]!
      const variance = slope[0]!
      spans.forEach(([from, to], i) => {
        let sum = 0
        if (i === main) {
          for (let a = 0; a < small; a++)
            for (let b = 0; b < small; b++) sum += solution[a]! * at.j[a * width + b]! * solution[b]!
        } else {
          for (let a = from; a < to; a++) {
            let reach = 0
            for (let b = 0; b < small; b++) reach += at.m[a * width + b]! * solution[b]!
            sum += reach * reach
          }
        }
        slope[i + 1] = sum
      })
      let spread = 0
      for (let a = 0; a < size; a++)
        for (let b = 0; b < size; b++) spread += slope[a]! * inverse[a * size + b]! * slope[b]!
      // A = 2 · inverse, because the deviance is twice the log likelihood: 2v² / (2 g′ inverse g).
      const df = variance ** 2 / spread
      return df > fewestDf ? df : undefined
    },
  }
}

/**
 * The fixed effects by generalised least squares, in the fixed directions.
 *
 * @example
 * const at = { inverse: [18], m: [1 / 18, 0.1, 0.1, 1.5] }
 * Array.from(fixedEffects({ sums: { width: 2, rank: 1 }, at }, Float64Array.of(6))) // [7.8]
 */
export function fixedEffects({ sums, at }: RemlFit, byLeastSquares: Float64Array): Float64Array {
  const { width, rank } = sums
  const small = width - 1
  const others = small - rank
  return byLeastSquares.map((effect, k) => {
    let sum = effect
    for (let b = 0; b < small; b++) sum += at.inverse[(others + k) * small + b]! * at.m[b * width + small]!
    return sum
  })
}

/**
 * The degrees of freedom of an F made of several contrasts, from those of the contrasts alone.
 *
 * Source: Fai and Cornelius (1996), as above: F's mean is matched.
 *
 * @example
 * jointDf([9, 9]) // 9
 */
export function jointDf(each: readonly number[]): number {
  const first = each[0]!
  if (each.every((df) => Math.abs(df - first) <= 1e-8 * first)) return first
  if (each.some((df) => df <= 2)) return 2
  const expected = each.reduce((sum, df) => sum + df / (df - 2), 0)
  return (2 * expected) / (expected - each.length)
}
