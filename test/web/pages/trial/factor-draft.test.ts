import { expect, test } from 'vitest'
import {
  draftOfPattern,
  levelOfPointer,
  sentFactor,
  withLabel,
  withLevel,
  withoutLevel,
  withVariable,
} from '#web/pages/trial/factor-draft.ts'

test('two ways side by side are words of one’s own, the usual one the reference', () => {
  expect(sentFactor(draftOfPattern('P4'))).toEqual({
    key: 'way of working',
    stage: 'dye',
    kind: 'category',
    levels: [
      { label: 'usual', isReference: true },
      { label: 'shortcut', isReference: false },
    ],
  })
})

test('a ladder of steam times brings its unit', () => {
  const { unit, levels } = sentFactor(draftOfPattern('P1'))
  expect([unit, levels.length, levels.at(-1)]).toEqual(['min', 6, { label: '75', isReference: true }])
})

test('a level that was added and left blank is not sent, and faults are counted without it', () => {
  const [first] = draftOfPattern('P1').levels
  const blank = withLabel(withLevel(draftOfPattern('P1')), first?.id ?? '', ' ')
  expect(sentFactor(blank).levels).toHaveLength(5)
  expect(levelOfPointer(blank, '#/levels/0/value')?.label).toBe('10')
})

test('a reference that is taken away leaves none named', () => {
  const draft = draftOfPattern('P4')
  expect(sentFactor(withoutLevel(draft, draft.reference)).levels).toEqual([
    { label: 'shortcut', isReference: false },
  ])
})

test('another variable keeps levels that are numbers and begins anew from words', () => {
  expect(withVariable(draftOfPattern('P1'), 'hold').levels).toHaveLength(6)
  expect(withVariable(draftOfPattern('P4'), 'coolDown')).toMatchObject({
    kind: 'number',
    stage: 'set',
    levels: [{ label: '' }, { label: '' }],
  })
})
