import fc from 'fast-check'
import { expect, test } from 'vitest'
import { studentT } from '#api/science/statistics/student-t.ts'
import {
  studentizedRange,
  studentizedRangeQuantile,
  studentizedRangeUpper,
} from '#api/science/statistics/studentized-range.ts'
import reference from '#test/reference/stats/distributions.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// Quadrature checked by nested adaptive integration: test/reference/stats/distributions.json
test.each(reference.expected.studentizedRange)('q = $q of $k groups, $df df', ({ q, k, df, cdf, upper }) => {
  expectClose(studentizedRange(q, { groups: k, df }).lower, cdf, 1e-10)
  expectClose(studentizedRange(q, { groups: k, df }).upper, upper, 1e-10)
})

test.each(reference.expected.studentizedRangeQuantile)(
  '$p lies below $quantile',
  ({ p, k, df, quantile }) => {
    expectClose(studentizedRangeQuantile(p, { groups: k, df }), quantile, 1e-9)
  },
)

// Upper 5 % points of the studentized range as printed in Pearson & Hartley, Biometrika Tables for Statisticians,
// table 29 (from memory)
test.each([
  [3, 10, 3.88],
  [5, 20, 4.23],
  [10, 60, 4.65],
  [20, 120, 5.13],
])('the upper 5 %% point of %d groups with %d degrees of freedom is %d', (groups, df, point) => {
  expect(studentizedRangeQuantile(0.95, { groups, df })).toBeCloseTo(point, 2)
})

test('two groups are a t-test, for any spread of the estimate', () => {
  for (const df of [0.1, 1, 2, 3.5, 40, 1e6])
    for (const t of [0.01, 0.7, 2, 15, 300])
      expectClose(
        studentizedRangeUpper(t * Math.SQRT2, { groups: 2, df }),
        Math.max(2 * studentT(t, df).upper, 1e-300),
        t === 300 && df > 40 ? 1 : 1e-11,
      )
})

test('the tails sum to 1 for few groups and for thousands', () => {
  for (const groups of [2, 7, 64, 65, 1000, 10_000])
    for (const df of [0.1, 2, 30, 1e9])
      for (const q of [1e-3, 0.8, 3, 6, 1e100]) {
        const { lower, upper } = studentizedRange(q, { groups, df })
        expect(lower).toBeGreaterThanOrEqual(0)
        expectClose(lower + upper, 1, 1e-11)
      }
})

test('a longer range is rarer, and rarer still with fewer groups', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.1, max: 40, noNaN: true }),
      fc.integer({ min: 2, max: 63 }),
      fc.double({ min: 1, max: 500, noNaN: true }),
      (q, groups, df) => {
        const here = studentizedRangeUpper(q, { groups, df })
        expect(studentizedRangeUpper(q + 0.1, { groups, df })).toBeLessThanOrEqual(here * (1 + 1e-11))
        expect(studentizedRangeUpper(q, { groups: groups + 1, df })).toBeGreaterThanOrEqual(
          here * (1 - 1e-11),
        )
      },
    ),
    { numRuns: 40 },
  )
})

test('a low quantile is undone as well as a high one', () => {
  for (const p of [1e-6, 0.05, 0.5, 0.99, 1 - 1e-9]) {
    const q = studentizedRangeQuantile(p, { groups: 5, df: 8 })
    expectClose(studentizedRange(q, { groups: 5, df: 8 }).lower, p, 1e-9)
  }
})

test('one group has no range', () => {
  expect(() => studentizedRange(3, { groups: 1, df: 5 })).toThrow(RangeError)
})
