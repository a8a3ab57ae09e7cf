import fc from 'fast-check'
import { expect, test } from 'vitest'
import { normal, normalQuantile, normalUpper } from '#api/science/statistics/normal.ts'
import reference from '#test/reference/stats/distributions.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// R 4.2.2, pnorm and qnorm: test/reference/stats/distributions.json
test.each(reference.expected.normal)('at most $z has the probability $cdf', ({ z, cdf }) => {
  expectClose(normal(z).lower, cdf, 1e-12)
})

test.each(reference.expected.normalQuantile)('$p lies below $quantile', ({ p, quantile }) => {
  expectClose(normalQuantile(p), quantile, 1e-12)
})

// Abramowitz & Stegun (1964), table 26.2: −log10 Q(x) at x = 20 is 88.56010 and at x = 30 is 197.30921
test('the far tail keeps its size where one minus the rest would be nothing', () => {
  expect(-Math.log10(normalUpper(20))).toBeCloseTo(88.5601, 4)
  expect(-Math.log10(normalUpper(30))).toBeCloseTo(197.30921, 5)
})

test('the tails sum to 1 and mirror one another', () => {
  fc.assert(
    fc.property(fc.double({ min: -40, max: 40, noNaN: true }), (z) => {
      expectClose(normal(z).lower + normal(z).upper, 1, 1e-15)
      expect(normal(z).lower).toBe(normal(-z).upper)
    }),
  )
})

test('the quantile undoes the distribution', () => {
  fc.assert(
    fc.property(fc.double({ min: -37, max: 8, noNaN: true }), (z) => {
      const { lower } = normal(z)
      fc.pre(lower < 0.9)
      expect(Math.abs(normalQuantile(lower) - z)).toBeLessThan(1e-13 * (1 + Math.abs(z)))
    }),
  )
})

test('a probability of 0 or 1 has no place', () => {
  expect(() => normalQuantile(0)).toThrow(RangeError)
  expect(() => normalQuantile(1)).toThrow(RangeError)
})
