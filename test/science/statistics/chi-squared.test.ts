import fc from 'fast-check'
import { expect, test } from 'vitest'
import { chiSquared, chiSquaredQuantile } from '#api/science/statistics/chi-squared.ts'
import reference from '#test/reference/stats/distributions.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// R 4.2.2, pchisq: test/reference/stats/distributions.json
test.each(reference.expected.chisq)(
  'both sides of $x with $df degrees of freedom',
  ({ x, df, cdf, upper }) => {
    expectClose(chiSquared(x, df).lower, cdf, 1e-10)
    expectClose(chiSquared(x, df).upper, upper, 1e-10)
  },
)

// Abramowitz & Stegun (1964), table 26.8, percentage points of the chi-squared distribution
test.each([
  [0.95, 1, 3.84146],
  [0.99, 10, 23.2093],
  [0.05, 5, 1.145476],
  [0.995, 100, 140.169],
])('the place with %d below it, %d df, is %d', (p, df, place) => {
  expectClose(chiSquaredQuantile(p, df), place, 4e-6)
})

test('two degrees of freedom are the exponential distribution', () => {
  for (const x of [1e-9, 0.2, 3, 40, 1200]) expectClose(chiSquared(x, 2).upper, Math.exp(-x / 2), 1e-12)
})

test('the tails sum to 1 and the quantile undoes them', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-6, max: 0.999, noNaN: true }),
      fc.double({ min: 0.2, max: 1e6, noNaN: true }),
      (p, df) => {
        const { lower, upper } = chiSquared(chiSquaredQuantile(p, df), df)
        expectClose(lower, p, 1e-9)
        expectClose(lower + upper, 1, 1e-14)
      },
    ),
  )
})

test('a place that no number can hold is refused, not answered with 0', () => {
  expect(() => chiSquaredQuantile(1e-30, 0.1)).toThrow(/beyond the numbers/)
})
