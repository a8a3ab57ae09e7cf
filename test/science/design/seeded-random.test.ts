import { expect, test } from 'vitest'
import { seededRandom, xoshiro128 } from '#api/science/design/seeded-random.ts'
import { normal } from '#api/science/statistics/normal.ts'

test('the generator gives the numbers of its authors’ reference code', () => {
  // Blackman & Vigna's xoshiro128** from the state 1, 2, 3, 4; values from memory, and the fifth of the ten, which is not
  // remembered with certainty, is left out: the five after it depend on every bit of the state all the same.
  const next = xoshiro128([1, 2, 3, 4])
  const drawn = Array.from({ length: 10 }, next)
  expect(drawn.slice(0, 4)).toEqual([11520, 0, 5927040, 70819200])
  expect(drawn.slice(5)).toEqual([1637235492, 1287239034, 3734860849, 3729100597, 4258142804])
})

test('one seed gives one row of draws, another seed another', () => {
  const row = (seed: number | string) => Array.from({ length: 5 }, seededRandom(seed).uniform)
  expect(row(7)).toEqual(row(7))
  expect(row(7)).not.toEqual(row(8))
  expect(row('blue')).not.toEqual(row('blve'))
})

test('normals follow the normal distribution', () => {
  // Kolmogorov–Smirnov: the largest gap of 20,000 draws stays under 1.63 ÷ √n in 99 of 100 rows (any printed table)
  const n = 20_000
  const { normal: draw } = seededRandom(1)
  const drawn = Array.from({ length: n }, draw).sort((a, b) => a - b)
  const gap = drawn.reduce((most, z, i) => Math.max(most, Math.abs(normal(z).lower - (i + 0.5) / n)), 0)
  expect(gap).toBeLessThan(1.63 / Math.sqrt(n))
})

test('a draw below six is a fair die', () => {
  // Chi-squared with 5 degrees of freedom: 15.09 is passed by 1 row in 100 (any printed table)
  const { below } = seededRandom(3)
  const counts = new Array<number>(6).fill(0)
  for (let i = 0; i < 60_000; i++) {
    const face = below(6)
    counts[face] = (counts[face] ?? 0) + 1
  }
  const square = counts.reduce((sum, count) => sum + (count - 10_000) ** 2 / 10_000, 0)
  expect(square).toBeLessThan(15.09)
})

test('a lot is drawn among one thing or more', () => {
  expect(seededRandom(1).below(1)).toBe(0)
  expect(() => seededRandom(1).below(0)).toThrow(RangeError)
})
