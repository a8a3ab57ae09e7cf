import { expect, test } from 'vitest'
import { shapiroWilk } from '#api/science/statistics/shapiro-wilk.ts'
import reference from '#test/reference/stats/shapiro-wilk.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// R 4.2.2, shapiro.test: test/reference/stats/shapiro-wilk.json
test.each(Object.entries(reference.expected))('%s', (name, { W, p }) => {
  const found = shapiroWilk(reference.data.vectors[name as keyof typeof reference.expected])
  if ('unavailable' in found) throw new Error(found.unavailable)
  expectClose(found.W, W, reference.tolerance.W)
  expectClose(found.p, p, reference.tolerance.p)
})

// Shapiro & Wilk (1965), example 1: weights of men in pounds, W = 0.79 (from memory)
test('the weights of eleven men in the first paper', () => {
  const found = shapiroWilk([148, 154, 158, 160, 161, 162, 166, 170, 182, 195, 236])
  expect(found).toMatchObject({ W: expect.closeTo(0.79, 2) })
})

test('scale and place do not matter', () => {
  const values = [3.7, 1.97, 5.45, 1.56, 2.34]
  const moved = shapiroWilk(values.map((value) => 1e6 + 1e-3 * value))
  expect(moved).toMatchObject({ W: expect.closeTo(0.896197594594, 6) })
})

test('too few, too many and equal values have no answer', () => {
  expect(shapiroWilk([1, 2])).toHaveProperty('unavailable')
  expect(shapiroWilk([4, 4, 4])).toHaveProperty('unavailable')
  expect(shapiroWilk(Array.from({ length: 5001 }, (_, i) => i))).toHaveProperty('unavailable')
})

// 5000 evenly spaced values are far from normal; 5000 normal quantiles are not.
test('five thousand values are still taken', () => {
  const even = shapiroWilk(Array.from({ length: 5000 }, (_, i) => i))
  expect(even).toMatchObject({ p: expect.closeTo(0, 20) })
})
