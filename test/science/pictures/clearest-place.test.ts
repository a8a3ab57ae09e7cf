import { expect, test } from 'vitest'
import { clearestPlace } from '#api/science/pictures/clearest-place.ts'

const box = (left: number, top = 0) => ({ left, top, width: 10, height: 10 })

test('of equally clear places the first is taken', () => {
  expect(clearestPlace([box(0), box(20)], [])).toBe(0)
})

test('the place that covers least is taken', () => {
  expect(clearestPlace([box(0), box(20)], [box(2), box(29)])).toBe(1)
})

test('a place outside is taken only when every place is', () => {
  const within = { left: 0, top: 0, width: 25, height: 30 }
  expect(clearestPlace([box(20), box(0)], [box(0)], within)).toBe(1)
  expect(clearestPlace([box(40), box(20)], [], within)).toBe(1)
})

test('no place, no choice', () => {
  expect(clearestPlace([], [])).toBe(-1)
})
