/** What a model says at some parameters: y − f of each point, and how f changes with each parameter there. */
export type ModelAt = {
  readonly residuals: readonly number[]
  /** One row a point, one column a parameter: ∂f/∂parameter. */
  readonly slopes: readonly (readonly number[])[]
}

export type NonlinearFit = {
  readonly parameters: readonly number[]
  readonly squares: number
  /** (JᵀJ)⁻¹ at the end: times the variance of a point it is that of the parameters, in the linear approximation. */
  readonly inverse: readonly (readonly number[])[]
  readonly converged: boolean
}

/**
 * Least squares of a curved model, by the method of Levenberg (1944) and Marquardt (1963), J. SIAM 11, 431–441, each
 * step by orthogonal decomposition.
 *
 * @throws RangeError when there are fewer points than parameters
 *
 * @example
 * const line = ([a, b]) => ({ residuals: [1 - a, 3 - a - b, 4 - a - 2 * b], slopes: [[1, 0], [1, 1], [1, 2]] })
 * nonlinearLeastSquares(line, [0, 0]) // { parameters: [1.1666667, 1.5], squares: 0.1666667, converged: true }
 */
export function nonlinearLeastSquares(
  model: (parameters: readonly number[]) => ModelAt,
  start: readonly number[],
  { rounds = 2000 }: { readonly rounds?: number } = {},
): NonlinearFit {
  let parameters = [...start]
  let here = model(parameters)
  let squares = squaresOf(here.residuals)
  if (here.residuals.length < start.length) throw new RangeError('a model needs a point for each parameter')
  let damping = 0.1
  let converged = false
  for (let round = 0; round < rounds && !converged; round++) {
    const scale = start.map((_, j) => Math.hypot(...here.slopes.map((row) => row[j] ?? 0)) || 1)
    const step = solved(here, scale, damping)
    const next = parameters.map((it, j) => it + (step[j] ?? 0))
    const there = model(next)
    const squaresThere = squaresOf(there.residuals)
    const small = step.every((it, j) => Math.abs(it) <= 1e-14 * Math.abs(next[j] ?? 0))
    if (squaresThere <= squares) {
      converged = small || (damping < 1e-8 && squares - squaresThere <= 1e-16 * squares)
      parameters = next
      here = there
      squares = squaresThere
      damping = Math.max(damping / 10, 1e-20)
    } else {
      // Near the end rounding alone makes the sum rise: the step is then already nothing.
      converged = step.every((it, j) => Math.abs(it) <= 1e-9 * Math.abs(parameters[j] ?? 0)) && damping < 1e-4
      if (damping > 1e40) break
      damping *= 10
    }
  }
  // The sum of squares stands still long before the parameters do: undamped steps go on while they grow shorter.
  let last = 1e-4
  for (let round = 0; converged && round < 60; round++) {
    const step = solved(
      here,
      start.map(() => 0),
      0,
    )
    const longest = Math.max(...step.map((it, j) => Math.abs(it / (parameters[j] || 1))))
    if (!(longest < last)) break
    last = longest
    parameters = parameters.map((it, j) => it + (step[j] ?? 0))
    here = model(parameters)
    squares = squaresOf(here.residuals)
  }
  const inverse = inverseOf(here.slopes)
  // A parameter that no longer moves the model has run away.
  const told = inverse.every((row) => row.every(Number.isFinite))
  return { parameters, squares, inverse, converged: converged && told }
}

function squaresOf(residuals: readonly number[]): number {
  const sum = residuals.reduce((total, it) => total + it * it, 0)
  return Number.isFinite(sum) ? sum : Number.POSITIVE_INFINITY
}

/** The damped step: rows √damping × scale are added, so that a long step costs. */
function solved({ residuals, slopes }: ModelAt, scale: readonly number[], damping: number): number[] {
  const extra = scale.map((of, i) => scale.map((_, j) => (i === j ? Math.sqrt(damping) * of : 0)))
  const { columns, upper } = orthogonal([...slopes, ...extra])
  const right = [...residuals, ...scale.map(() => 0)]
  const p = scale.length
  const step = new Array<number>(p).fill(0)
  for (let i = p - 1; i >= 0; i--) {
    let rest = columns[i]!.reduce((sum, q, row) => sum + q * right[row]!, 0)
    for (let j = i + 1; j < p; j++) rest -= upper[i]![j]! * step[j]!
    step[i] = upper[i]![i]! === 0 ? 0 : rest / upper[i]![i]!
  }
  return step
}

function inverseOf(slopes: readonly (readonly number[])[]): number[][] {
  const { upper } = orthogonal(slopes)
  const p = upper.length
  // R⁻¹, column by column; then (JᵀJ)⁻¹ = R⁻¹R⁻ᵀ.
  const inverse = upper.map(() => new Array<number>(p).fill(0))
  for (let j = 0; j < p; j++)
    for (let i = j; i >= 0; i--) {
      let rest = i === j ? 1 : 0
      for (let k = i + 1; k <= j; k++) rest -= upper[i]![k]! * inverse[k]![j]!
      inverse[i]![j] = rest / upper[i]![i]!
    }
  return inverse.map((row) => inverse.map((other) => row.reduce((sum, it, k) => sum + it * other[k]!, 0)))
}

/** Q by columns and R, by the modified method of Gram and Schmidt, each column made orthogonal twice. */
function orthogonal(rows: readonly (readonly number[])[]) {
  const p = rows[0]?.length ?? 0
  const columns = Array.from({ length: p }, (_, j) => rows.map((row) => row[j] ?? 0))
  const upper = columns.map(() => new Array<number>(p).fill(0))
  for (let j = 0; j < p; j++) {
    const column = columns[j]!
    for (let twice = 0; twice < 2; twice++)
      for (let i = 0; i < j; i++) {
        const other = columns[i]!
        const share = other.reduce((sum, it, row) => sum + it * column[row]!, 0)
        upper[i]![j]! += share
        for (let row = 0; row < column.length; row++) column[row]! -= share * other[row]!
      }
    const length = Math.hypot(...column)
    upper[j]![j] = length
    if (length > 0) for (let row = 0; row < column.length; row++) column[row]! /= length
  }
  return { columns, upper }
}
