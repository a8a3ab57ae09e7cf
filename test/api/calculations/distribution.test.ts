import fc from 'fast-check'
import { expect, test } from 'vitest'
import reference from '#test/reference/stats/distributions.json' with { type: 'json' }
import { calculate } from '#test/support/calculate.ts'
import { expectClose } from '#test/support/close-to.ts'

const { expected } = reference
const [range] = expected.studentizedRange
const [dunnett] = expected.dunnett

// R 4.2.2 and quadrature: test/reference/stats/distributions.json
test.each([
  [{ kind: 'normal', at: -6 }, { lower: expected.normal[1]!.cdf }],
  [{ kind: 't', at: -15, df: 6 }, { lower: 2.76512006929528e-6 }],
  [{ kind: 'F', at: 150, df1: 3, df2: 20 }, { upper: 7.06271208068891e-14 }],
  [{ kind: 'chi-squared', at: 60, df: 5 }, { upper: 1.2154569777183e-11 }],
  [{ kind: 'studentized-range', at: range!.q, groups: range!.k, df: range!.df }, { upper: range!.upper }],
  [{ kind: 't', at: 3, df: 14, noncentrality: 1 }, { upper: 0.0441045362752782 }],
  [{ kind: 'F', at: 3.2, df1: 3, df2: 20, noncentrality: 11 }, { lower: 0.302746287488311 }],
  [
    { kind: 'dunnett', at: 2.6, df: 20, nReference: 6, nOthers: [6, 6, 6] },
    { upper: dunnett!['pTwoSidedAt2.6'] },
  ],
  [
    { kind: 'dunnett', probability: 0.95, df: 20, nReference: 6, nOthers: [6, 6, 6], sides: 1 },
    { quantile: dunnett!.criticalOneSided95 },
  ],
  [{ kind: 'normal', probability: 1e-10 }, { quantile: -6.36134090240406 }],
  [{ kind: 'studentized-range', probability: 0.95, groups: 3, df: 2 }, { quantile: 8.33078264563711 }],
] as const)('%j', async (request, known) => {
  const { status, body } = await calculate('distribution', request)
  expect(status).toBe(200)
  for (const [name, value] of Object.entries(known)) expectClose(body[name], value, 1e-9)
})

test('a place beyond the numbers that can be told has a sentence', async () => {
  const { status, body } = await calculate('distribution', {
    kind: 'chi-squared',
    df: 0.1,
    probability: 1e-30,
  })
  expect([status, body.quantile]).toEqual([200, { unavailable: expect.stringContaining('beyond') }])
})

test.each([
  [{ kind: 't', at: 1 }, '#/df'],
  [{ kind: 'F', at: 1, df1: 2 }, '#/df2'],
  [{ kind: 'studentized-range', at: 1, df: 2 }, '#/groups'],
  [{ kind: 'dunnett', at: 1, df: 2, nReference: 3 }, '#/nOthers'],
  [{ kind: 'normal' }, '#/at'],
  [{ kind: 'normal', probability: 1 }, '#/probability'],
  [{ kind: 'normal', at: 1, noncentrality: 1 }, '#/noncentrality'],
  [{ kind: 'F', at: 1, df1: 1, df2: 1, noncentrality: -1 }, '#/noncentrality'],
  [{ kind: 't', at: 1, df: 0 }, '#/df'],
  [{ kind: 'gamma', at: 1 }, '#/kind'],
])('%j is refused at %s', async (request, pointer) => {
  const { status, body } = await calculate('distribution', request)
  expect([status, body.errors[0].pointer]).toEqual([422, pointer])
})

test('any place and any degrees of freedom within their bounds have two tails', async () => {
  const any = {
    at: fc.double({ noDefaultInfinity: true, noNaN: true }),
    df: fc.double({ min: 0.01, max: 1e9, noNaN: true }),
  }
  const request = fc.oneof(
    fc.record({ kind: fc.constantFrom('normal', 't', 'chi-squared'), ...any }),
    fc.record({ kind: fc.constant('F'), at: any.at, df1: any.df, df2: any.df }),
    fc.record({
      kind: fc.constant('t'),
      ...any,
      noncentrality: fc.double({ min: -1e6, max: 1e6, noNaN: true }),
    }),
    fc.record({ kind: fc.constant('studentized-range'), ...any, groups: fc.integer({ min: 2, max: 100 }) }),
  )
  await fc.assert(
    fc.asyncProperty(request, async (body) => {
      const answer = await calculate('distribution', body)
      expect(answer.status).toBe(200)
      expectClose(answer.body.lower + answer.body.upper, 1, 1e-9)
    }),
    { numRuns: 150 },
  )
})
