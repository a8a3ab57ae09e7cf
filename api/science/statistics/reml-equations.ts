import { choleskyInPlace } from './matrix-cholesky.ts'
import type { RemlSums } from './reml-sums.ts'

/** Mixed model equations at given ratios of each random variance to the residual one: V = I + Σ ratio · ZZ′. */
export type RemlEquations = {
  readonly sums: RemlSums
  readonly ratios: readonly number[]
  /** All columns' products through V of the main groups alone, `width` by `width`. */
  readonly m: Float64Array
  /** Root of the ratio for the columns of random intercepts, 1 for fixed directions. */
  readonly root: Float64Array
  /** Cholesky factor of the equations, their random columns times `root`. */
  readonly factor: Float64Array
  /** log|V| + log|Q′V⁻¹Q|, Q the orthonormal fixed directions. */
  readonly logDeterminants: number
  /** e′Pe, e the residuals of least squares and P as in Searle, Casella and McCulloch. */
  readonly squares: number
  /** log determinants + (rows − rank) · log e′Pe: what is made smallest. */
  readonly deviance: number
}

/**
 * Sets the equations up and solves for what REML makes smallest; nothing comes back when the numbers give out. The
 * groups of the main random intercept are eliminated by (I + γJ)⁻¹ = I − γ/(1 + nγ) J for each group of n rows.
 *
 * Source: Searle, Casella and McCulloch (1992), Variance Components, sections 6.6 and 7.6 (Henderson's equations).
 *
 * @example
 * const sums = {
 *   groups: [{ name: 'pot' }], main: 0, rows: 4, rank: 1, spans: [[0, 0]], width: 2, total: Float64Array.of(1, 0, 0, 10),
 *   bySize: [{ size: 2, count: 2, squares: Float64Array.of(2, 0, 0, 18) }],
 * }
 * remlEquations(sums, [8.5]).squares // 1.5
 */
export function remlEquations(sums: RemlSums, ratios: readonly number[]): RemlEquations | undefined {
  const { width, rank, spans, main, rows, total, bySize } = sums
  const small = width - 1
  const others = small - rank
  const ratio = ratios[main]!
  const m = Float64Array.from(total)
  let logDeterminants = 0
  for (const { size, count, squares } of bySize) {
    logDeterminants += count * Math.log1p(ratio * size)
    const weight = ratio / (1 + ratio * size)
    for (let i = 0; i < m.length; i++) m[i]! -= weight * squares[i]!
  }
  const root = new Float64Array(small).fill(1)
  spans.forEach(([from, to], i) => {
    if (i !== main) root.fill(Math.sqrt(ratios[i]!), from, to)
  })
  const factor = new Float64Array(small * small)
  for (let a = 0; a < small; a++) {
    for (let b = 0; b <= a; b++) factor[a * small + b] = root[a]! * m[a * width + b]! * root[b]!
    if (a < others) factor[a * small + a]! += 1
  }
  const logDeterminant = choleskyInPlace(factor, small)
  if (logDeterminant === undefined) return undefined
  logDeterminants += logDeterminant
  let squares = m[small * width + small]!
  const solved = new Float64Array(small)
  for (let a = 0; a < small; a++) {
    let value = root[a]! * m[a * width + small]!
    for (let b = 0; b < a; b++) value -= factor[a * small + b]! * solved[b]!
    value /= factor[a * small + a]!
    solved[a] = value
    squares -= value * value
  }
  if (!(squares > 0)) return undefined
  const deviance = logDeterminants + (rows - rank) * Math.log(squares)
  return { sums, ratios, m, root, factor, logDeterminants, squares, deviance }
}
