import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fDistribution, fQuantile } from '#api/science/statistics/f-distribution.ts'
import { studentT } from '#api/science/statistics/student-t.ts'
import reference from '#test/reference/stats/distributions.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// R 4.2.2, pf and qf: test/reference/stats/distributions.json
test.each(reference.expected.F)('both sides of F = $F with $df1 and $df2', ({ F, df1, df2, cdf, upper }) => {
  expectClose(fDistribution(F, df1, df2).lower, cdf, 1e-10)
  expectClose(fDistribution(F, df1, df2).upper, upper, 1e-10)
})

test.each(reference.expected.fQuantile)('$p lies below $quantile', ({ p, df1, df2, quantile }) => {
  expectClose(fQuantile(p, df1, df2), quantile, 1e-9)
})

// mpmath 1.3 at 60 digits
test.each([
  [5, 0.1, 1e9, 0.0522911798714668, 1e-11],
  [1e300, 3, 1, 7.351051938957227e-151, 1e-11],
])('far corners: beyond F = %d with %d and %d', (F, df1, df2, upper, tolerance) => {
  expectClose(fDistribution(F, df1, df2).upper, upper, tolerance)
})

test('F with 1 degree of freedom is the square of t', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.001, max: 1e8, noNaN: true }),
      fc.integer({ min: 1, max: 1e5 }),
      (t, df) => {
        expectClose(fDistribution(t * t, 1, df).upper, 2 * studentT(t, df).upper, 1e-9)
      },
    ),
  )
})

test('the tails sum to 1, and F turned over changes their places', () => {
  const df = fc.double({ min: 0.1, max: 1e6, noNaN: true })
  fc.assert(
    fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), df, df, (F, df1, df2) => {
      const { lower, upper } = fDistribution(F, df1, df2)
      expectClose(lower + upper, 1, 1e-12)
      expect(Math.abs(fDistribution(1 / F, df2, df1).upper - lower)).toBeLessThan(1e-9)
    }),
  )
})

test('the quantile undoes the distribution', () => {
  const df = fc.double({ min: 1, max: 1e5, noNaN: true })
  fc.assert(
    fc.property(fc.double({ min: 1e-10, max: 0.999, noNaN: true }), df, df, (p, df1, df2) => {
      expectClose(fDistribution(fQuantile(p, df1, df2), df1, df2).lower, p, 1e-9)
    }),
  )
})
