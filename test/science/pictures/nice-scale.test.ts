import fc from 'fast-check'
import { expect, test } from 'vitest'
import { niceScale } from '#api/science/pictures/nice-scale.ts'

test('losses up to 11.47 stand on an axis from 0 to 12 in twos', () => {
  expect(niceScale(0, 11.47)).toEqual({
    from: 0,
    to: 12,
    step: 2,
    ticks: [0, 2, 4, 6, 8, 10, 12],
    decimals: 0,
  })
})

test('tenths are round numbers of tenths', () => {
  expect(niceScale(0, 0.56).ticks).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6])
})

test('one value alone gets room on either side', () => {
  const scale = niceScale(5, 5)
  expect(scale.from).toBeLessThan(5)
  expect(scale.to).toBeGreaterThan(5)
})

test('an axis that runs backwards is refused', () => {
  expect(() => niceScale(2, 1)).toThrow(RangeError)
  expect(() => niceScale(0, Number.POSITIVE_INFINITY)).toThrow(RangeError)
})

test('every axis covers its values in four to eight even steps', () => {
  const ends = fc.tuple(
    fc.double({ min: -1e4, max: 1e4, noNaN: true }),
    fc.double({ min: 1e-3, max: 1e4, noNaN: true }),
  )
  fc.assert(
    fc.property(ends, ([low, span]) => {
      const { from, to, ticks, step } = niceScale(low, low + span)
      expect(from).toBeLessThanOrEqual(low + 1e-6 * step)
      expect(to).toBeGreaterThanOrEqual(low + span - 1e-6 * step)
      expect(ticks.length).toBeGreaterThanOrEqual(5)
      expect(ticks.length).toBeLessThanOrEqual(9)
    }),
  )
})
