import fc from 'fast-check'
import { expect, test } from 'vitest'
import { directionInWords, directions } from '#api/science/colour/direction-in-words.ts'
import { anyLab } from '#test/support/any-lab.ts'

const mid = { L: 50, a: 0, b: 0 }

// The steps 0.5, 1.5 and 6 are ours, after common practice; each is tried on both of its sides.
test.each([
  [0.499, []],
  [0.5, ['slightly lighter']],
  [1.499, ['slightly lighter']],
  [1.5, ['lighter']],
  [5.999, ['lighter']],
  [6, ['much lighter']],
  [-6, ['much darker']],
  [-0.6, ['slightly darker']],
])('L* %d more is said as %j', (dL, words) => {
  expect(directionInWords(mid, { ...mid, L: 50 + dL })).toEqual(words)
})

// The trade calls a red or green yellower or bluer, a yellow or blue redder or greener.
test.each([
  ['red', { L: 50, a: 40, b: 0 }, { L: 50, a: 40, b: 3 }, ['yellower']],
  ['red', { L: 50, a: 40, b: 0 }, { L: 50, a: 40, b: -3 }, ['bluer']],
  ['yellow', { L: 70, a: 0, b: 60 }, { L: 70, a: 4, b: 60 }, ['redder']],
  ['yellow', { L: 70, a: 0, b: 60 }, { L: 70, a: -4, b: 60 }, ['greener']],
  ['green', { L: 50, a: -40, b: 0 }, { L: 50, a: -40, b: 3 }, ['yellower']],
  ['green', { L: 50, a: -40, b: 0 }, { L: 50, a: -40, b: -3 }, ['bluer']],
  ['blue', { L: 40, a: 0, b: -40 }, { L: 40, a: 3, b: -40 }, ['redder']],
  ['blue', { L: 40, a: 0, b: -40 }, { L: 40, a: -3, b: -40 }, ['greener']],
  ['red that crosses hue 0', { L: 50, a: 40, b: -2 }, { L: 50, a: 40, b: 2 }, ['yellower']],
])('a %s: %j to %j is %j', (_name, before, after, words) => {
  expect(directions(before, after)).toEqual(words)
})

test('a fade is lighter and duller; a deepening darker and brighter', () => {
  const deep = { L: 40, a: 30, b: 30 }
  const pale = { L: 50, a: 25, b: 25 }
  expect(directions(deep, pale)).toEqual(['lighter', 'duller'])
  expect(directions(pale, deep)).toEqual(['darker', 'brighter'])
})

test('near grey the cast is named instead of brightness and hue', () => {
  expect(directions(mid, { L: 50, a: 0, b: 3 })).toEqual(['yellower'])
  expect(directions(mid, { L: 50, a: -2, b: -3 })).toEqual(['greener', 'bluer'])
})

test('no change has no words, and a way said is unsaid by going back', () => {
  const opposite: Record<string, string> = {
    lighter: 'darker',
    darker: 'lighter',
    brighter: 'duller',
    duller: 'brighter',
    redder: 'greener',
    greener: 'redder',
    yellower: 'bluer',
    bluer: 'yellower',
  }
  fc.assert(
    fc.property(anyLab(), anyLab(), (one, two) => {
      expect(directions(one, one)).toEqual([])
      const there = directions(one, two)
      // Straight opposites have no hue between them; each is then named from where it starts.
      fc.pre(one.a * two.b !== two.a * one.b)
      expect(directions(two, one)).toEqual(there.map((word) => opposite[word]))
    }),
  )
})
