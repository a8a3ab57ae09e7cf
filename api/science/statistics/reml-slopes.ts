import { inverseFromCholesky } from './matrix-cholesky.ts'
import type { RemlEquations } from './reml-equations.ts'
import type { RemlSums } from './reml-sums.ts'

/** How REML bends at given ratios; V, P and e as in `reml-equations.ts`, Vᵢ = ZᵢZᵢ′. */
export type RemlSlopes = {
  /** The deviance's slope in each ratio. */
  readonly slope: Float64Array
  /** tr(PVᵢPVⱼ), e′PVᵢPe and e′PVᵢPVⱼPe. */
  readonly traces: Float64Array
  readonly linear: Float64Array
  readonly quadratic: Float64Array
  /** Inverse of the mixed model equations. */
  readonly inverse: Float64Array
  /** Products of the columns through V⁻¹V₀V⁻¹ of the main groups alone. */
  readonly j: Float64Array
}

/**
 * Slopes of first and second order, exactly, through small matrices only.
 *
 * Source: Searle, Casella and McCulloch (1992), Variance Components, section 6.6 (score and information of REML). The
 * main groups' part of PVᵢP is written out by V⁻¹ − V⁻¹G A G′V⁻¹, A the inverse of the equations.
 *
 * @example
 * const sums = {
 *   groups: [{ name: 'pot' }], main: 0, rows: 4, rank: 1, spans: [[0, 0]], width: 2, total: Float64Array.of(1, 0, 0, 10),
 *   bySize: [{ size: 2, count: 2, squares: Float64Array.of(2, 0, 0, 18) }],
 * }
 * const m = [1 / 18, 0, 0, 1.5]
 * remlSlopes({ sums, ratios: [8.5], m, root: [1], factor: [Math.sqrt(1 / 18)], squares: 1.5 }).slope[0].toFixed(9) // '0.000000000'
 */
export function remlSlopes(equations: RemlEquations): RemlSlopes {
  const { sums, ratios, m, root, factor, squares } = equations
  const { width, rank, spans, main, rows } = sums
  const count = ratios.length
  const small = width - 1
  const others = small - rank
  const free = rows - rank
  const inverse = inverseFromCholesky(factor, small)
  for (let a = 0; a < small; a++)
    for (let b = 0; b < small; b++) inverse[a * small + b]! *= root[a]! * root[b]!
  const { j, j3, trace, square } = mainGroups(sums, ratios[main]!)

  // How P acts on the columns of the other random intercepts (first) and on the residuals (last), a column a row.
  const acted = others + 1
  const rho = new Float64Array(acted * width)
  for (let column = 0; column < acted; column++) {
    const from = column < others ? column : small
    for (let a = 0; a < small; a++) {
      let sum = 0
      for (let b = 0; b < small; b++) sum += inverse[a * small + b]! * m[from * width + b]!
      rho[column * width + a] = -sum
    }
    rho[column * width + from]! += 1
  }
  const t = times(rho, acted, m, width)
  const jr = times(rho, acted, j, width)
  const along = (matrix: Float64Array, a: number, b: number) => {
    let sum = 0
    for (let k = 0; k < width; k++) sum += matrix[a * width + k]! * rho[b * width + k]!
    return sum
  }

  const slope = new Float64Array(count)
  const linear = new Float64Array(count)
  const traces = new Float64Array(count * count)
  const quadratic = new Float64Array(count * count)
  const own = main * count + main
  const { aj, ajaj } = repeated(inverse, j, small, width)
  slope[main] = trace - aj
  traces[own] = square - 2 * summed(inverse, j3, small, width) + ajaj
  linear[main] = along(jr, others, others)
  quadratic[own] =
    along(times(rho.subarray(others * width), 1, j3, width), 0, others) -
    form(inverse, jr, others, small, width)
  for (let i = 0; i < count; i++) {
    if (i === main) continue
    const [from, to] = spans[i]!
    for (let a = from; a < to; a++) {
      const u = t[others * width + a]!
      slope[i]! += t[a * width + a]!
      linear[i]! += u * u
      traces[i * count + main]! += along(jr, a, a)
      quadratic[i * count + main]! += along(jr, others, a) * u
      for (let k = 0; k < count; k++) {
        if (k === main) continue
        const [start, end] = spans[k]!
        for (let b = start; b < end; b++) {
          const value = t[a * width + b]!
          traces[i * count + k]! += value * value
          quadratic[i * count + k]! += u * value * t[others * width + b]!
        }
      }
    }
    traces[main * count + i] = traces[i * count + main]!
    quadratic[main * count + i] = quadratic[i * count + main]!
  }
  for (let i = 0; i < count; i++) slope[i]! -= (free * linear[i]!) / squares
  return { slope, traces, linear, quadratic, inverse, j }
}

function mainGroups({ bySize, width }: RemlSums, ratio: number) {
  const j = new Float64Array(width * width)
  const j3 = new Float64Array(width * width)
  let trace = 0
  let square = 0
  for (const { size, count, squares } of bySize) {
    const s = 1 / (1 + ratio * size)
    trace += count * size * s
    square += count * (size * s) ** 2
    for (let i = 0; i < j.length; i++) {
      j[i]! += s * s * squares[i]!
      j3[i]! += size * s * s * s * squares[i]!
    }
  }
  return { j, j3, trace, square }
}

/** Rows times a symmetric matrix. */
function times(rows: Float64Array, count: number, matrix: Float64Array, width: number): Float64Array {
  const product = new Float64Array(count * width)
  for (let a = 0; a < count; a++) {
    for (let k = 0; k < width; k++) {
      const value = rows[a * width + k]!
      if (value === 0) continue
      for (let b = 0; b < width; b++) product[a * width + b]! += value * matrix[k * width + b]!
    }
  }
  return product
}

/** tr(AB) of two symmetric matrices, the second in wider rows. */
function summed(a: Float64Array, b: Float64Array, small: number, width: number): number {
  let sum = 0
  for (let i = 0; i < small; i++) for (let k = 0; k < small; k++) sum += a[i * small + k]! * b[i * width + k]!
  return sum
}

/** tr(AJ) and tr(AJAJ). */
function repeated(inverse: Float64Array, j: Float64Array, small: number, width: number) {
  const product = new Float64Array(small * small)
  let aj = 0
  for (let a = 0; a < small; a++) {
    for (let k = 0; k < small; k++) {
      const value = inverse[a * small + k]!
      if (value === 0) continue
      for (let b = 0; b < small; b++) product[a * small + b]! += value * j[k * width + b]!
    }
    aj += product[a * small + a]!
  }
  let ajaj = 0
  for (let a = 0; a < small; a++)
    for (let b = 0; b < small; b++) ajaj += product[a * small + b]! * product[b * small + a]!
  return { aj, ajaj }
}

/** v′Av for one row of vectors. */
function form(inverse: Float64Array, rows: Float64Array, row: number, small: number, width: number): number {
  let sum = 0
  for (let a = 0; a < small; a++)
    for (let b = 0; b < small; b++)
      sum += rows[row * width + a]! * inverse[a * small + b]! * rows[row * width + b]!
  return sum
}
