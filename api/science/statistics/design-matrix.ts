import type { Coded } from './model-columns.ts'
import type { Term } from './model-terms.ts'

/** One column of a design in treatment coding: 1 where each factor named stands at its level, times the covariates. */
export type DesignColumn = {
  readonly name: string
  readonly term: number
  /** The level of each factor of the term, by the factor's place. */
  readonly levels: ReadonlyMap<number, number>
  readonly covariates: readonly number[]
}

/** A covariate, centred and scaled so that sizes do not matter: x = centre + scale · value. */
export type Covariate = {
  readonly name: string
  readonly centre: number
  readonly scale: number
  readonly values: Float64Array
}

export const intercept: Term = { name: '(Intercept)', factors: [], covariates: [] }

/**
 * How many columns each term takes in treatment coding: levels less one, multiplied.
 *
 * @example
 * columnsOfTerm({ name: 'a:b', factors: [0, 1], covariates: [] }, [3, 4]) // 6
 */
export function columnsOfTerm(term: Term, levelCounts: readonly number[]): number {
  return term.factors.reduce((product, factor) => product * (levelCounts[factor]! - 1), 1)
}

/**
 * The columns of all terms, in treatment coding against the first level of each factor.
 *
 * @example
 * const terms = [intercept, { name: 'steam', factors: [0], covariates: [] }]
 * designColumns(terms, [{ name: 'steam', levels: ['10', '20'] }], []).map((it) => it.name) // ['(Intercept)', 'steam=20']
 */
export function designColumns(
  terms: readonly Term[],
  factors: readonly Coded[],
  covariates: readonly Covariate[],
): DesignColumn[] {
  const levelCounts = factors.map((it) => it.levels.length)
  return terms.flatMap((term, place) =>
    Array.from({ length: columnsOfTerm(term, levelCounts) }, (_, column) => {
      const levels = new Map<number, number>()
      let rest = column
      // The first factor runs fastest.
      for (const factor of term.factors) {
        levels.set(factor, 1 + (rest % (levelCounts[factor]! - 1)))
        rest = Math.floor(rest / (levelCounts[factor]! - 1))
      }
      const name = nameOf(term, levels, factors, covariates)
      return { name, term: place, levels, covariates: term.covariates }
    }),
  )
}

function placeInTerm(term: Term, factors: readonly Coded[], levelOf: (factor: number) => number): number {
  let place = 0
  let stride = 1
  for (const factor of term.factors) {
    const level = levelOf(factor)
    if (level === 0) return -1
    place += (level - 1) * stride
    stride *= factors[factor]!.levels.length - 1
  }
  return place
}

function nameOf(
  term: Term,
  at: ReadonlyMap<number, number>,
  factors: readonly Coded[],
  covariates: readonly Covariate[],
): string {
  const parts = [
    ...term.factors.map((it) => `${factors[it]!.name}=${factors[it]!.levels[at.get(it)!]}`),
    ...term.covariates.map((it) => covariates[it]!.name),
  ]
  return parts.length === 0 ? intercept.name : parts.join(':')
}

/** The coding of a factor's levels: against the first, or against the mean of all (the last level is −1 throughout). */
export type Coding = 'treatment' | 'sum'

/**
 * The columns of one term at chosen rows, column after column. With `raw` the covariates are scaled but not centred,
 * so that a factor beside its interaction with a covariate is judged where the covariate is 0.
 *
 * @example
 * const term = { name: 'steam', factors: [0], covariates: [] }
 * const steam = { name: 'steam', levels: ['10', '20', '30'], codes: Int32Array.of(0, 1, 2) }
 * Array.from(termMatrix(term, Int32Array.of(0, 1, 2), [steam], [], 'sum')) // [1, 0, -1, 0, 1, -1]
 */
export function termMatrix(
  term: Term,
  rows: Int32Array,
  factors: readonly Coded[],
  covariates: readonly Covariate[],
  coding: Coding,
): Float64Array {
  const levelCounts = factors.map((it) => it.levels.length)
  const columns = columnsOfTerm(term, levelCounts)
  const matrix = new Float64Array(rows.length * columns)
  const raw = coding === 'sum'
  for (let i = 0; i < rows.length; i++) {
    const row = rows[i]!
    let product = 1
    for (const it of term.covariates) {
      const x = covariates[it]!
      product *= x.values[row]! + (raw ? x.centre / x.scale : 0)
    }
    if (coding === 'treatment') {
      const place = placeInTerm(term, factors, (factor) => factors[factor]!.codes[row]!)
      if (place >= 0) matrix[place * rows.length + i] = product
      continue
    }
    for (let column = 0; column < columns; column++) {
      let value = product
      let rest = column
      for (const factor of term.factors) {
        const last = levelCounts[factor]! - 1
        const level = factors[factor]!.codes[row]!
        if (level === last) value = -value
        else if (level !== rest % last) value = 0
        rest = Math.floor(rest / last)
      }
      matrix[column * rows.length + i] = value
    }
  }
  return matrix
}
