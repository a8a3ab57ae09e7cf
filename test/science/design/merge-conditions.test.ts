import { expect, test } from 'vitest'
import { mergeConditions } from '#api/science/design/merge-conditions.ts'

test('the most specific place wins: skein over vessel over session over trial', () => {
  const merged = mergeConditions(
    { a: 'trial', b: 'trial', c: 'trial', d: 'trial' },
    [{ b: 'session', c: 'session', d: 'session' }],
    [{ c: 'vessel', d: 'vessel' }],
    [{ d: 'skein' }],
  )
  expect(merged).toEqual({ a: 'trial', b: 'session', c: 'vessel', d: 'skein' })
})

test('parents come before children', () => {
  expect(mergeConditions({}, [], [], [{ acid: 60, hold: 20 }, { acid: 40 }])).toEqual({ acid: 40, hold: 20 })
})

test('null says “not recorded here” and wins; what is left out says nothing', () => {
  expect(mergeConditions({ acid: 60, hold: 20 }, [], [{ acid: null, hold: undefined }], [])).toEqual({
    acid: null,
    hold: 20,
  })
})

test('what was given is not changed', () => {
  const trial = Object.freeze({ acid: 60 })
  mergeConditions(trial, [{ acid: 40 }], [], [])
  expect(trial).toEqual({ acid: 60 })
})
