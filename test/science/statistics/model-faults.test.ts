import { expect, test } from 'vitest'
import { fitModel } from '#api/science/statistics/model.ts'
import { modelFaults } from '#api/science/statistics/model-faults.ts'
import type { ModelRow, ModelSpec } from '#api/science/statistics/model-spec.ts'

const rows: readonly ModelRow[] = [
  { y: 1, a: 'x', s: 1, v: 1, x: 0.5 },
  { y: 2, a: 'y', s: 1, v: 2, x: 1.5 },
  { y: 2.5, a: 'x', s: 2, v: 1, x: 2.5 },
]
const where = (spec: Partial<ModelSpec>, table: readonly ModelRow[] = rows) =>
  modelFaults({ response: 'y', ...spec }, table).map((it) => it.path.join('/'))

test('a model that names its columns rightly has no fault', () => {
  const spec = { factors: ['a'], covariates: ['x'], randomIntercepts: ['s', 's:v'], meansOf: ['a'] }
  expect(where({ ...spec, interactions: [['a', 'x']], reference: { a: 'y' } })).toEqual([])
})

test('a column that is not there is pointed at where it is named', () => {
  expect(where({ response: 'z' })).toEqual(['response'])
  expect(where({ factors: ['a', 'q'], covariates: ['w'] })).toEqual(['factors/1', 'covariates/0'])
  expect(where({ randomIntercepts: ['s', 's:w'] })).toEqual(['randomIntercepts/1'])
  expect(where({ factors: ['toString'] })).toEqual(['factors/0'])
})

test('a cell that is blank, or text where a number belongs, is pointed at', () => {
  const table: ModelRow[] = [
    { y: '2', a: 'x', s: 1 },
    { a: ' ', y: Number.POSITIVE_INFINITY, s: null },
    { a: ['x'], y: 3 },
  ]
  expect(where({ factors: ['a'], randomIntercepts: ['s'] }, table)).toEqual([
    'rows/0/y',
    'rows/1/y',
    'rows/1/a',
    'rows/1/s',
    'rows/2/a',
    'rows/2/s',
  ])
})

test('a name that is no factor, a level that is not met and an interaction with itself are pointed at', () => {
  const spec = {
    factors: ['a'],
    meansOf: ['a:a', 'x'],
    interactions: [
      ['a', 'a'],
      ['a', 'q'],
    ],
  }
  expect(where({ ...spec, reference: { a: 'w', q: '1' } })).toEqual([
    'interactions/0',
    'interactions/1/1',
    'meansOf/0',
    'meansOf/1',
    'reference/a',
    'reference/q',
  ])
})

test('one column is one thing: it is named once, and the response is no term', () => {
  expect(where({ factors: ['a', 'a'], covariates: ['y'] })).toEqual(['covariates/0', 'factors/1'])
  expect(where({ factors: ['x'], covariates: ['x'] })).toEqual(['covariates/0'])
})

test('limits are refused before any row is looked at', () => {
  const many = Array.from({ length: 20_001 }, () => ({ y: 'text' }))
  expect(where({}, many)).toEqual(['rows'])
  expect(where({}, [])).toEqual(['rows'])
  expect(where({ factors: ['a', 'b', 'c', 'd', 'e', 'f'], randomIntercepts: ['g', 'h', 'i', 'j'] })).toEqual([
    'factors',
    'randomIntercepts',
  ])
  expect(where({ level: 1 })).toEqual(['level'])
})

test('a table of wrong rows does not fill the refusal', () => {
  const wrong = Array.from({ length: 5000 }, () => ({ y: 'text' }))
  expect(where({}, wrong)).toHaveLength(200)
})

test('a caller in science who did not look for faults gets the first as an error', () => {
  expect(() => fitModel({ response: 'z' }, rows)).toThrow(RangeError)
})
