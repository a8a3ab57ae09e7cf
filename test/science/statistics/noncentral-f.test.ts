import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fDistribution } from '#api/science/statistics/f-distribution.ts'
import { noncentralF, noncentralFQuantile } from '#api/science/statistics/noncentral-f.ts'
import { noncentralT } from '#api/science/statistics/noncentral-t.ts'
import reference from '#test/reference/stats/distributions.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// Poisson mixture in R 4.2.2: test/reference/stats/distributions.json
test.each(reference.expected.noncentralF)('F = $F, $df1 and $df2 df, λ = $lambda', (row) => {
  const { F, df1, df2, lambda, cdf, upper } = row
  expectClose(noncentralF(F, df1, df2, lambda).lower, cdf, 1e-10)
  expectClose(noncentralF(F, df1, df2, lambda).upper, upper, 1e-10)
  expectClose(noncentralFQuantile(cdf, df1, df2, lambda), F, 1e-9)
})

test('with 1 degree of freedom it is the square of a non-central t', () => {
  for (const [t, df, delta] of [
    [2, 9, 1.3],
    [7, 30, 4],
    [0.2, 5, 3],
  ] as const) {
    const squared = noncentralF(t * t, 1, df, delta * delta)
    expectClose(squared.lower, noncentralT(t, df, delta).lower - noncentralT(-t, df, delta).lower, 1e-9)
    expectClose(squared.upper, noncentralT(t, df, delta).upper + noncentralT(-t, df, delta).lower, 1e-9)
  }
})

test('without noncentrality it is F', () => {
  expect(noncentralF(3, 2, 9, 0)).toEqual(fDistribution(3, 2, 9))
})

test('the tails sum to 1, also for a very large noncentrality', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
      fc.double({ min: 0.5, max: 100, noNaN: true }),
      fc.double({ min: 0.5, max: 1e5, noNaN: true }),
      fc.double({ min: 0, max: 1e5, noNaN: true }),
      (F, df1, df2, lambda) => {
        const { lower, upper } = noncentralF(F, df1, df2, lambda)
        expectClose(lower + upper, 1, 1e-10)
      },
    ),
  )
  const { lower, upper } = noncentralF(1e5, 10, 20, 1e6)
  expectClose(lower + upper, 1, 1e-11)
})

test('a noncentrality below 0 is refused', () => {
  expect(() => noncentralF(1, 2, 3, -1)).toThrow(RangeError)
})
