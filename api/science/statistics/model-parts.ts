import type { Covariate } from './design-matrix.ts'
import type { LinearModelParts } from './linear-model.ts'
import { codedColumn, numberColumn } from './model-columns.ts'
import type { ModelRow, ModelSpec } from './model-spec.ts'
import { termsOf } from './model-terms.ts'

/**
 * What a linear model is made of, read from the rows: terms, factors with their levels, covariates centred and scaled.
 *
 * @throws RangeError when the interactions make more than 200 terms
 *
 * @example
 * modelParts({ response: 'dE', covariates: ['x'] }, [{ x: 2, dE: 1 }, { x: 6, dE: 3 }]).covariates[0].centre // 4
 */
export function modelParts(spec: ModelSpec, rows: readonly ModelRow[]): LinearModelParts {
  return {
    terms: termsOf(spec),
    factors: (spec.factors ?? []).map((name) => codedColumn(rows, name)),
    covariates: (spec.covariates ?? []).map((name) => centred(name, numberColumn(rows, name))),
  }
}

function centred(name: string, values: Float64Array): Covariate {
  const first = values[0]!
  const centre = first + values.reduce((sum, value) => sum + (value - first), 0) / values.length
  const scale = values.reduce((most, value) => Math.max(most, Math.abs(value - centre)), 0) || 1
  // A column that is the same throughout is 0 throughout, whatever rounding makes of its mean.
  const still = values.every((value) => value === first)
  return { name, centre, scale, values: values.map((value) => (still ? 0 : (value - centre) / scale)) }
}
