import { choleskyInPlace, inverseFromCholesky } from './matrix-cholesky.ts'
import { type RemlEquations, remlEquations } from './reml-equations.ts'
import { type RemlSlopes, remlSlopes } from './reml-slopes.ts'
import type { RemlSums } from './reml-sums.ts'

/** The equations at some ratios together with their slopes. */
type RemlAt = RemlEquations & RemlSlopes

function withSlopes(equations: RemlEquations | undefined): RemlAt | undefined {
  return equations && { ...equations, ...remlSlopes(equations) }
}

/** Where REML is smallest: ratios to the residual variance, some of them perhaps exactly 0 (then `singular`). */
export type RemlFit = {
  readonly sums: RemlSums
  readonly at: RemlAt
  readonly ratios: readonly number[]
  /** Residual variance, in the scale of the residuals that were given. */
  readonly residual: number
  readonly singular: boolean
}

const smallest = 1e-8
const largest = 1e9

/**
 * Restricted maximum likelihood for random intercepts: Newton's method on the logarithms of the variance ratios from
 * the best point of a coarse grid. A ratio goes to exactly 0 when the likelihood falls from 0 onwards.
 *
 * Source: Patterson and Thompson (1971), Biometrika 58, 545–554. The score and the information: see `reml-slopes.ts`.
 *
 * @example
 * const sums = {
 *   groups: [{ name: 'pot' }], main: 0, rows: 4, rank: 1, spans: [[0, 0]], width: 2, total: Float64Array.of(1, 0, 0, 10),
 *   bySize: [{ size: 2, count: 2, squares: Float64Array.of(2, 0, 0, 18) }],
 * }
 * remlFit(sums) // { ratios: [8.5], residual: 0.5, singular: false }
 */
export function remlFit(sums: RemlSums): RemlFit | { readonly unavailable: string } {
  let at = best(sums, grid(sums.groups.length))
  if (!at) return { unavailable: 'The variances could not be worked out from these numbers.' }
  for (let round = 0; round < 80; round++) {
    const next: RemlAt | undefined = zeroed(sums, at) ?? opened(sums, at) ?? stepped(sums, at)
    if (!next) break
    const still = Math.max(
      ...at.ratios.map((ratio, i) => Math.abs(ratio - next.ratios[i]!) / (ratio + smallest)),
    )
    at = next
    if (still < 1e-11) break
  }
  const settled = at.ratios.every((ratio, i) => ratio === 0 || Math.abs(at.slope[i]! * ratio) < 1e-4)
  if (at.ratios.some((ratio) => ratio >= (settled ? largest : 1e4)))
    return {
      unavailable: 'Within groups the rows hardly differ, so the variances cannot be set against each other.',
    }
  if (!settled) return { unavailable: 'The search for the variances did not come to an end.' }
  return {
    sums,
    at,
    ratios: at.ratios,
    residual: at.squares / (sums.rows - sums.rank),
    singular: at.ratios.some((ratio) => ratio === 0),
  }
}

function grid(count: number): number[][] {
  const tried = count === 1 ? [0.01, 0.1, 0.5, 2, 10, 100] : [0.05, 0.5, 8]
  let points: number[][] = [[]]
  for (let i = 0; i < count; i++) points = points.flatMap((point) => tried.map((it) => [...point, it]))
  return points
}

function best(sums: RemlSums, points: readonly number[][]): RemlAt | undefined {
  let found: RemlEquations | undefined
  for (const point of points) {
    const at = remlEquations(sums, point)
    if (at && !(found && found.deviance <= at.deviance)) found = at
  }
  return withSlopes(found)
}

/** The same with a small and falling ratio at 0, if that is at least as good and stays so. */
function zeroed(sums: RemlSums, at: RemlAt): RemlAt | undefined {
  for (let i = 0; i < at.ratios.length; i++) {
    const ratio = at.ratios[i]!
    if (ratio === 0 || ratio > 0.2 || !(at.slope[i]! > 0 || ratio < smallest)) continue
    const without = remlEquations(sums, at.ratios.with(i, 0))
    if (!without || without.deviance > at.deviance + 1e-10) continue
    const there = withSlopes(without)
    if (there && there.slope[i]! >= 0) return there
  }
  return undefined
}

/** The same with a ratio taken away from 0, if that lowers the deviance. */
function opened(sums: RemlSums, at: RemlAt): RemlAt | undefined {
  for (let i = 0; i < at.ratios.length; i++) {
    if (at.ratios[i] !== 0 || at.slope[i]! >= 0) continue
    for (let ratio = 0.1; ratio > smallest; ratio /= 10) {
      const open = remlEquations(sums, at.ratios.with(i, ratio))
      if (open && open.deviance < at.deviance - 1e-12) return withSlopes(open)
    }
  }
  return undefined
}

function stepped(sums: RemlSums, at: RemlAt): RemlAt | undefined {
  const count = at.ratios.length
  const live = at.ratios.flatMap((ratio, i) => (ratio > 0 ? [i] : []))
  if (live.length === 0) return undefined
  const free = sums.rows - sums.rank
  const gradient = live.map((i) => at.ratios[i]! * at.slope[i]!)
  const curvature = (i: number, k: number) => {
    const bend =
      -at.traces[i * count + k]! +
      (free * 2 * at.quadratic[i * count + k]!) / at.squares -
      (free * at.linear[i]! * at.linear[k]!) / at.squares ** 2
    return at.ratios[i]! * at.ratios[k]! * bend + (i === k ? at.ratios[i]! * at.slope[i]! : 0)
  }
  for (const ridge of [0, 1e-3, 0.1, 1, 10, 100, 1e4]) {
    const size = live.length
    const matrix = new Float64Array(size * size)
    for (let a = 0; a < size; a++) {
      for (let b = 0; b < size; b++) matrix[a * size + b] = curvature(live[a]!, live[b]!)
      const i = live[a]!
      matrix[a * size + a]! += ridge * (1e-6 + at.ratios[i]! ** 2 * at.traces[i * count + i]!)
    }
    if (choleskyInPlace(matrix, size) === undefined) continue
    const inverse = inverseFromCholesky(matrix, size)
    const step = live.map((_, a) =>
      live.reduce((sum, __, b) => sum - inverse[a * size + b]! * gradient[b]!, 0),
    )
    const longest = Math.max(...step.map(Math.abs))
    // A step of a rounding error ends the search.
    if (longest < 1e-12) return undefined
    for (let share = Math.min(1, 3 / longest); share > 1e-3; share /= 3) {
      const ratios = [...at.ratios]
      live.forEach((i, a) => {
        ratios[i] = Math.min(largest, Math.max(smallest / 10, at.ratios[i]! * Math.exp(share * step[a]!)))
      })
      const next = remlEquations(sums, ratios)
      if (next && next.deviance <= at.deviance + 1e-13 * Math.abs(at.deviance)) return withSlopes(next)
    }
  }
  return undefined
}
