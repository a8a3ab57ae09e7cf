import { expect, test } from 'vitest'
import { termsOf } from '#api/science/statistics/model-terms.ts'

const names = (spec: Parameters<typeof termsOf>[0]) => termsOf(spec).map((it) => it.name)

test('factors come first, then covariates, then interactions in the order of the factors', () => {
  expect(
    names({
      response: 'y',
      factors: ['a', 'b'],
      covariates: ['x'],
      interactions: [
        ['x', 'b'],
        ['b', 'a'],
      ],
    }),
  ).toEqual(['a', 'b', 'x', 'b:x', 'a:b'])
})

test('all interactions of three factors are three of two and one of three', () => {
  expect(names({ response: 'y', factors: ['a', 'b', 'c'], interactions: 'all' })).toEqual([
    'a',
    'b',
    'c',
    'a:b',
    'a:c',
    'b:c',
    'a:b:c',
  ])
})

test('an interaction of three brings those of two with it, and the same one twice counts once', () => {
  const interactions = [
    ['c', 'b', 'a'],
    ['a', 'b'],
  ]
  expect(names({ response: 'y', factors: ['a', 'b', 'c'], interactions })).toEqual([
    'a',
    'b',
    'c',
    'a:b',
    'a:c',
    'b:c',
    'a:b:c',
  ])
})

test('more than 200 terms are refused', () => {
  const covariates = Array.from({ length: 30 }, (_, i) => `x${i}`)
  expect(() => names({ response: 'y', covariates, interactions: [covariates] })).toThrow(RangeError)
  const pairs = covariates.flatMap((a, i) => covariates.slice(i + 1).map((b) => [a, b]))
  expect(() => names({ response: 'y', covariates, interactions: pairs })).toThrow(RangeError)
})
