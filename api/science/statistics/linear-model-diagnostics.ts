import { chiSquared } from './chi-squared.ts'
import type { LinearModel } from './linear-model.ts'
import { numberColumn } from './model-columns.ts'
import { modelFit } from './model-fit.ts'
import { modelParts } from './model-parts.ts'
import { fixedPartOf, randomPart } from './model-random.ts'
import type { ModelRow, ModelSpec, Unavailable } from './model-spec.ts'
import { remlResiduals } from './reml-residuals.ts'
import { type ShapiroWilk, shapiroWilk } from './shapiro-wilk.ts'

export type ModelDiagnostics = {
  /** Response less fit of every row, in the response's own unit; with random intercepts also less its groups' part. */
  readonly residuals: Float64Array
  readonly fitted: Float64Array
  readonly normality: ShapiroWilk | Readonly<Unavailable>
  /** Does the spread grow or shrink with the fit? Koenker's form of the Breusch–Pagan test. */
  readonly spread: { readonly statistic: number; readonly df: 1; readonly p: number } | Readonly<Unavailable>
  /** The row that moves the fit most when it is left out, by Cook's distance. */
  readonly influence:
    | { readonly row: number; readonly cook: number; readonly leverage: number }
    | Readonly<Unavailable>
}

/**
 * What the residuals of a model say about it: to be looked at, not to choose a test by. With few rows these checks see
 * little. The request is one that `modelFaults` finds no fault with.
 *
 * Sources: Royston (1995), Appl. Stat. 44, 547–551; Koenker (1981), J. Econometrics 17, 107–112; Cook (1977),
 * Technometrics 19, 15–18.
 *
 * @throws RangeError when the model is too large to be fitted
 *
 * @example
 * modelDiagnostics({ response: 'dE' }, [{ dE: 1 }, { dE: 3 }, { dE: 8 }]).influence // { row: 2, cook: 0.9231, leverage: 0.3333 }
 */
export function modelDiagnostics(spec: ModelSpec, rows: readonly ModelRow[]): ModelDiagnostics {
  const response = numberColumn(rows, spec.response)
  const { model, judge, random } = modelFit(
    modelParts(spec, rows),
    response,
    randomPart(rows, spec.randomIntercepts ?? []),
  )
  const scaled = random?.fit ? remlResiduals(random.fit, fixedPartOf(model)) : model.residuals
  const residuals = scaled.map((it) => it * model.scale)
  const fitted = response.map((value, row) => value - residuals[row]!)
  if (judge.nothing !== undefined) {
    const none = { unavailable: judge.nothing }
    return { residuals, fitted, normality: none, spread: none, influence: none }
  }
  return {
    residuals,
    fitted,
    normality: shapiroWilk([...residuals]),
    spread: spreadAgainstFit(scaled, fitted, model.scale),
    influence: random
      ? { unavailable: 'Cook’s distance is of models without random intercepts.' }
      : influenceIn(model),
  }
}

function influenceIn(model: LinearModel): ModelDiagnostics['influence'] {
  const { rows, rank, cells, design } = model
  const leverages = new Float64Array(cells.counts.length)
  const directions = design.directions()
  for (let k = 0; k < rank; k++)
    for (let cell = 0; cell < leverages.length; cell++)
      leverages[cell]! += directions[k * design.rows + cell]! ** 2 / cells.counts[cell]!
  const spread = model.residualSquares / model.residualDf
  let influence = { row: 0, cook: -1, leverage: 0 }
  for (let row = 0; row < rows; row++) {
    const leverage = leverages[cells.of[row]!]!
    // A row that the model follows wholly has no distance; leaving it out would take a column away.
    if (leverage > 1 - 1e-10) continue
    const cook = (model.residuals[row]! ** 2 * leverage) / (rank * spread * (1 - leverage) ** 2)
    if (cook > influence.cook) influence = { row, cook, leverage }
  }
  return influence
}

function spreadAgainstFit(
  residuals: Float64Array,
  fitted: Float64Array,
  scale: number,
): ModelDiagnostics['spread'] {
  const rows = residuals.length
  const squares = residuals.map((it) => it * it)
  const meanSquare = squares.reduce((sum, it) => sum + it, 0) / rows
  const first = fitted[0]!
  const meanFit = fitted.reduce((sum, it) => sum + (it - first), 0) / rows
  let xx = 0
  let xy = 0
  let yy = 0
  for (let row = 0; row < rows; row++) {
    const x = (fitted[row]! - first - meanFit) / scale
    const y = squares[row]! - meanSquare
    xx += x * x
    xy += x * y
    yy += y * y
  }
  if (!(xx > 1e-20 * rows)) return { unavailable: 'All rows have the same fit, so spread cannot go with it.' }
  if (!(yy > 1e-20 * meanSquare ** 2 * rows))
    return { unavailable: 'All residuals are of one size, so spread cannot go with anything.' }
  const statistic = (rows * xy * xy) / (xx * yy)
  return { statistic, df: 1, p: chiSquared(statistic, 1).upper }
}
