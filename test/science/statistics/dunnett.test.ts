import { expect, test } from 'vitest'
import {
  dunnett,
  dunnettOfLoadings,
  dunnettQuantile,
  dunnettQuantileOfLoadings,
} from '#api/science/statistics/dunnett.ts'
import { studentT, studentTQuantile } from '#api/science/statistics/student-t.ts'
import reference from '#test/reference/stats/distributions.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// Quadrature checked by nested adaptive integration and mvtnorm 1.1.3: test/reference/stats/distributions.json
test.each(reference.expected.dunnett)('$nControl against $nOthers with $df df', (row) => {
  const of = { df: row.df, nReference: row.nControl, nOthers: row.nOthers }
  expectClose(dunnettQuantile(0.95, of), row.criticalTwoSided95, 1e-9)
  expectClose(dunnettQuantile(0.95, { ...of, sides: 1 }), row.criticalOneSided95, 1e-9)
  expectClose(dunnett(2.6, of).upper, row['pTwoSidedAt2.6'], 1e-10)
  expectClose(dunnett(2.1, { ...of, sides: 1 }).upper, row['pOneSidedAt2.1'], 1e-10)
})

// Dunnett (1955), table 1a (one-sided) and Dunnett (1964), Biometrics 20, 482–491, table II (two-sided), 95 %,
// equal groups (from memory)
test.each([
  [2, 10, 1, 2.15],
  [4, 20, 1, 2.3],
  [3, 16, 2, 2.59],
  [5, 30, 2, 2.66],
] as const)('%d others and %d df, %d-sided: the printed 5 %% point is %d', (others, df, sides, point) => {
  const of = { df, nReference: 6, nOthers: Array.from({ length: others }, () => 6), sides }
  expect(Math.abs(dunnettQuantile(0.95, of) - point)).toBeLessThan(0.0051)
})

test('one group beside the reference is a t-test, on one side and on two', () => {
  for (const df of [0.1, 1, 5, 80])
    for (const t of [0.2, 1.7, 9]) {
      const of = { df, nReference: 4, nOthers: [9] }
      expectClose(dunnett(t, of).upper, 2 * studentT(t, df).upper, 1e-11)
      expectClose(dunnett(-t, { ...of, sides: 1 }).lower, studentT(-t, df).lower, 1e-11)
    }
  expectClose(
    dunnettQuantile(0.95, { df: 9, nReference: 4, nOthers: [7] }),
    studentTQuantile(0.975, 9),
    1e-12,
  )
})

// With nothing shared and a known spread the comparisons are independent: 1 − (1 − 2Φ(−w))^k.
test('independent comparisons multiply', () => {
  const of = { df: Number.POSITIVE_INFINITY, loadings: [0, 0, 0] }
  expectClose(dunnettOfLoadings(2, of).upper, 1 - (1 - 2 * 0.022750131948179) ** 3, 1e-12)
})

test('63 groups beside a small reference keep their digits', () => {
  const nOthers = Array.from({ length: 63 }, () => 790)
  // The whole family shares almost all of its noise, so the point lies between one comparison's and Bonferroni's.
  const point = dunnettQuantile(0.95, { df: 630, nReference: 1, nOthers })
  expect(point).toBeGreaterThan(studentTQuantile(0.975, 630))
  expect(point).toBeLessThan(studentTQuantile(1 - 0.025 / 63, 630))
  const { lower, upper } = dunnett(point, { df: 630, nReference: 1, nOthers })
  expectClose(lower, 0.95, 1e-9)
  expectClose(lower + upper, 1, 1e-12)
})

test('a reference of one beside groups of thousands is still exact', () => {
  for (const n of [1000, 100_000, 100_000_000])
    for (const t of [0.01, 0.5, 2, 30]) {
      const of = { df: 7, nReference: 1, nOthers: [n] }
      expectClose(dunnett(t, of).upper, 2 * studentT(t, 7).upper, 1e-12)
      expectClose(dunnett(t, { ...of, sides: 1 }).upper, studentT(t, 7).upper, 1e-12)
    }
})

test('the tails sum to 1 from the smallest to the largest t', () => {
  for (const sides of [1, 2] as const)
    for (const df of [0.1, 3, 1e9])
      for (const t of [1e-6, 0.5, 2, 30, 1e300]) {
        const { lower, upper } = dunnett(t, { df, nReference: 3, nOthers: [5, 8], sides })
        expect(lower).toBeGreaterThan(0)
        expectClose(lower + upper, 1, 1e-10)
      }
})

test('low quantiles are undone too', () => {
  const of = { df: 7, loadings: [0.5, 0.7], sides: 1 as const }
  for (const p of [0.01, 0.3, 0.7])
    expectClose(dunnettOfLoadings(dunnettQuantileOfLoadings(p, of), of).lower, p, 1e-9)
})

test('no group beside the reference is refused', () => {
  expect(() => dunnett(2, { df: 5, nReference: 4, nOthers: [] })).toThrow(RangeError)
  expect(() => dunnettOfLoadings(2, { df: 5, loadings: [1] })).toThrow(RangeError)
})
