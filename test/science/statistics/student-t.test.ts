import fc from 'fast-check'
import { expect, test } from 'vitest'
import { studentT, studentTQuantile } from '#api/science/statistics/student-t.ts'
import reference from '#test/reference/stats/distributions.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// R 4.2.2, pt and qt: test/reference/stats/distributions.json
test.each(reference.expected.t)(
  'both sides of t = $t with $df degrees of freedom',
  ({ t, df, cdf, upper }) => {
    expectClose(studentT(t, df).lower, cdf, 1e-10)
    expectClose(studentT(t, df).upper, upper, 1e-10)
  },
)

test.each(reference.expected.tQuantile)('$p lies below $quantile ($df df)', ({ p, df, quantile }) => {
  expectClose(studentTQuantile(p, df), quantile, 1e-9)
})

// With 1 df the distribution is Cauchy's, with 2 it is ½ + t / (2 √(2 + t²)): closed forms.
test('one and two degrees of freedom agree with their closed forms, far out too', () => {
  for (const t of [1e-6, 0.3, 1, 7, 1e4]) {
    expectClose(studentT(t, 1).upper, Math.atan(1 / t) / Math.PI, 1e-13)
    const root = Math.sqrt(2 + t * t)
    expectClose(studentT(t, 2).upper, 1 / (root * (root + t)), 1e-13)
  }
  expectClose(studentT(1e200, 1).upper, 1e-200 / Math.PI, 1e-12)
})

// mpmath 1.3 at 60 digits: I_x(df/2, 1/2) / 2
test.each([
  [15, 999_999, 3.718132431059389e-51],
  [15, 1e9, 3.671013072353861e-51],
  [1e5, 0.1, 0.131987244186201],
])('beyond t = %d with %d degrees of freedom lies %d', (t, df, upper) => {
  expectClose(studentT(t, df).upper, upper, 1e-10)
})

test('endless degrees of freedom are the normal distribution', () => {
  expectClose(studentT(-1.96, Number.POSITIVE_INFINITY).lower, 0.0249978951482204, 1e-12)
  expectClose(studentTQuantile(0.975, Number.POSITIVE_INFINITY), 1.95996398454005, 1e-12)
})

const degrees = fc.double({ min: 0.1, max: 1e9, noNaN: true })
const place = fc.double({ min: -1e300, max: 1e300, noNaN: true })

test('the tails are probabilities that sum to 1, at any t and any degrees of freedom', () => {
  fc.assert(
    fc.property(place, degrees, (t, df) => {
      const { lower, upper } = studentT(t, df)
      expect(Math.min(lower, upper)).toBeGreaterThanOrEqual(0)
      expectClose(lower + upper, 1, 1e-12)
    }),
  )
})

test('a larger t has less beyond it', () => {
  fc.assert(
    fc.property(fc.double({ min: -50, max: 50, noNaN: true }), degrees, (t, df) => {
      expect(studentT(t + 0.01, df).upper).toBeLessThanOrEqual(studentT(t, df).upper)
    }),
  )
})

test('the quantile undoes the distribution', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-12, max: 0.999, noNaN: true }),
      fc.double({ min: 0.5, max: 1e6, noNaN: true }),
      (p, df) => expectClose(studentT(studentTQuantile(p, df), df).lower, p, 1e-9),
    ),
  )
})

test('no degrees of freedom is refused', () => {
  expect(() => studentT(1, 0)).toThrow(RangeError)
  expect(() => studentT(Number.NaN, 3)).toThrow(RangeError)
})
