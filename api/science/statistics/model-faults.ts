import { columnsNamed, levelText } from './model-columns.ts'
import type { ModelRow, ModelSpec } from './model-spec.ts'

/** Where a request for a model is at fault, as a path into it, and what to do about it. */
export type ModelFault = { readonly path: readonly (string | number)[]; readonly detail: string }

export const modelLimits = { rows: 20_000, factors: 5, randomIntercepts: 3 } as const

/** No more faults than this are listed; a table of 20,000 wrong rows needs no more to be mended. */
const mostFaults = 200

/**
 * Everything that keeps a model from being fitted at all: columns that are not there, cells that are blank or text
 * where a number belongs, names that mean nothing, limits exceeded. A fault of the data that leaves a part without an
 * answer is no fault in this sense.
 *
 * @example
 * const rows = [{ dE: 1, steam: '10' }, { dE: '2', steam: '20' }]
 * modelFaults({ response: 'dE', factors: ['steam'] }, rows).map((it) => it.path) // [['rows', 1, 'dE']]
 */
export function modelFaults(spec: ModelSpec, rows: readonly ModelRow[]): ModelFault[] {
  const faults: ModelFault[] = []
  const say = (detail: string, ...path: (string | number)[]) => {
    if (faults.length < mostFaults) faults.push({ path, detail })
  }
  const { factors = [], covariates = [], randomIntercepts = [] } = spec
  if (rows.length === 0) say('A model needs rows.', 'rows')
  if (rows.length > modelLimits.rows) say(`A model takes ${modelLimits.rows} rows at most.`, 'rows')
  if (factors.length > modelLimits.factors)
    say(`A model takes ${modelLimits.factors} factors at most.`, 'factors')
  if (randomIntercepts.length > modelLimits.randomIntercepts)
    say(`A model takes ${modelLimits.randomIntercepts} random intercepts at most.`, 'randomIntercepts')
  if (spec.level !== undefined && !(spec.level > 0 && spec.level < 1))
    say('The level lies strictly between 0 and 1.', 'level')
  if (faults.length > 0) return faults

  const known = new Set<string>()
  for (const row of rows) for (const name in row) known.add(name)
  const isColumn = (name: string) => known.has(name)
  const twice = (names: readonly string[], key: string, taken: ReadonlySet<string>) => {
    const met = new Set(taken)
    names.forEach((name, i) => {
      if (met.has(name)) say(`“${name}” is named twice.`, key, i)
      met.add(name)
    })
  }
  if (!isColumn(spec.response)) say(`There is no column “${spec.response}”.`, 'response')
  for (const [key, names] of [
    ['factors', factors],
    ['covariates', covariates],
  ] as const)
    names.forEach((name, i) => {
      if (!isColumn(name)) say(`There is no column “${name}”.`, key, i)
      else if (name === spec.response) say(`“${name}” is the response already.`, key, i)
    })
  twice(factors, 'factors', new Set())
  twice(covariates, 'covariates', new Set(factors))
  twice(randomIntercepts, 'randomIntercepts', new Set())
  const labels = new Set(factors)
  randomIntercepts.forEach((name, i) => {
    const columns = columnsNamed(name, isColumn)
    if (!columns) say(`There is no column “${name}”, nor columns that make it up.`, 'randomIntercepts', i)
    for (const column of columns ?? []) labels.add(column)
  })
  if (faults.length > 0) return faults

  const numbers = [spec.response, ...covariates]
  rows.forEach((row, i) => {
    for (const name of numbers) {
      const value = row[name]
      if (typeof value !== 'number')
        say(`${name} takes a number; ${readAs(value)} was read.`, 'rows', i, name)
      else if (!Number.isFinite(value)) say(`${name} takes a number that is finite.`, 'rows', i, name)
    }
    for (const name of labels) {
      const value = row[name]
      const isLabel = ['string', 'number', 'boolean'].includes(typeof value)
      if (!isLabel || levelText(value).trim() === '')
        say(`${name} is missing here; a blank is no level.`, 'rows', i, name)
    }
  })
  sayOfNames(spec, rows, say)
  return faults
}

type Say = (detail: string, ...path: (string | number)[]) => void

function sayOfNames(spec: ModelSpec, rows: readonly ModelRow[], say: Say): void {
  const { factors = [], covariates = [] } = spec
  const terms = new Set([...factors, ...covariates])
  if (Array.isArray(spec.interactions))
    spec.interactions.forEach((names: readonly string[], i) => {
      names.forEach((name, k) => {
        if (!terms.has(name)) say(`“${name}” is neither a factor nor a covariate here.`, 'interactions', i, k)
      })
      if (new Set(names).size < 2)
        say('An interaction is of two different columns or more.', 'interactions', i)
    })
  const isFactor = (name: string) => factors.includes(name)
  spec.meansOf?.forEach((name, i) => {
    const named = columnsNamed(name, isFactor)
    if (!named) say(`“${name}” is no factor here.`, 'meansOf', i)
    else if (new Set(named).size < named.length) say(`“${name}” names a factor twice.`, 'meansOf', i)
  })
  for (const [name, level] of Object.entries(spec.reference ?? {})) {
    if (!isFactor(name)) say(`“${name}” is no factor here.`, 'reference', name)
    else if (!rows.some((row) => levelText(row[name]) === level))
      say(`No row has the level “${level}” of ${name}.`, 'reference', name)
  }
}

function readAs(value: unknown): string {
  if (value === undefined || value === null) return 'nothing'
  if (typeof value === 'string') return `“${value.length > 40 ? `${value.slice(0, 40)}…` : value}”`
  return typeof value === 'boolean' ? String(value) : 'something else'
}
