import { expect, test } from 'vitest'
import { staggeredEntry } from '#api/science/design/staggered-entry.ts'

test('the longest goes in first and all come out together', () => {
  expect(staggeredEntry([20, 75, 50, 35, 10])).toEqual({
    entries: [
      { stays: 75, inAt: 0 },
      { stays: 50, inAt: 25 },
      { stays: 35, inAt: 40 },
      { stays: 20, inAt: 55 },
      { stays: 10, inAt: 65 },
    ],
    allOutAt: 75,
  })
})

test('what is not steamed never goes in', () => {
  expect(staggeredEntry([0, 30])).toEqual({ entries: [{ stays: 30, inAt: 0 }], allOutAt: 30 })
  expect(staggeredEntry([0])).toEqual({ entries: [], allOutAt: 0 })
})

test('a time below nothing is refused', () => {
  expect(() => staggeredEntry([-5])).toThrow(RangeError)
})
