import fc from 'fast-check'
import { expect, test } from 'vitest'
import { noncentralT, noncentralTQuantile } from '#api/science/statistics/noncentral-t.ts'
import { studentT } from '#api/science/statistics/student-t.ts'
import reference from '#test/reference/stats/distributions.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// Quadrature in R 4.2.2: test/reference/stats/distributions.json
test.each(reference.expected.noncentralT)(
  't = $t, $df df, noncentrality $ncp',
  ({ t, df, ncp, cdf, upper }) => {
    expectClose(noncentralT(t, df, ncp).lower, cdf, 1e-10)
    expectClose(noncentralT(t, df, ncp).upper, upper, 1e-10)
    expectClose(noncentralTQuantile(cdf, df, ncp), t, 1e-9)
  },
)

test('without noncentrality it is Student’s t', () => {
  expect(noncentralT(2.1, 7, 0)).toEqual(studentT(2.1, 7))
  expectClose(noncentralT(2.1, 7, 1e-12).upper, studentT(2.1, 7).upper, 1e-10)
})

test('turned about 0 the tails change places', () => {
  const there = noncentralT(2.5, 4, 1.5)
  const back = noncentralT(-2.5, 4, -1.5)
  expect([back.lower, back.upper]).toEqual([there.upper, there.lower])
})

// The two ways of integrating must meet where one takes over from the other.
test('a noncentrality of 40 is as smooth as its neighbours', () => {
  const at = (delta: number) => noncentralT(42, 30, delta).upper
  expectClose(at(40.0000001), at(39.9999999), 1e-6)
  expectClose(at(40.5) - at(40), at(40) - at(39.5), 0.1)
})

test('the tails sum to 1 at any place, and nothing hangs', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e300, max: 1e300, noNaN: true }),
      fc.double({ min: 0.1, max: 1e9, noNaN: true }),
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      (t, df, delta) => {
        const { lower, upper } = noncentralT(t, df, delta)
        expectClose(lower + upper, 1, 1e-9)
      },
    ),
    { numRuns: 60 },
  )
  for (const t of [0, 0.4, 3, 60])
    for (const df of [0.1, 1, 12, 1e5])
      for (const delta of [-3, 0.5, 20, 39, 200]) {
        const { lower, upper } = noncentralT(t, df, delta)
        expectClose(lower + upper, 1, 1e-11)
      }
})

test('a larger noncentrality leaves less below', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -5, max: 30, noNaN: true }),
      fc.double({ min: 1, max: 200, noNaN: true }),
      fc.double({ min: 0, max: 20, noNaN: true }),
      (t, df, delta) => {
        const more = noncentralT(t, df, delta + 0.1).lower
        expect(more).toBeLessThanOrEqual(noncentralT(t, df, delta).lower * (1 + 1e-12))
      },
    ),
  )
})
