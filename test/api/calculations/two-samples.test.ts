import { expect, test } from 'vitest'
import reference from '#test/reference/stats/tost-noninferiority-med.json' with { type: 'json' }
import { calculate } from '#test/support/calculate.ts'
import { expectClose } from '#test/support/close-to.ts'

const { a, b } = reference.data.twoSample

// R 4.2.2: test/reference/stats/tost-noninferiority-med.json
test('the difference with its margin', async () => {
  const { status, body } = await calculate('two-samples', { a, b, margin: 1 })
  const known = reference.expected.twoSample.welch
  expect(status).toBe(200)
  expectClose(body.p, known.pTwoSided, 1e-9)
  expectClose(body.equivalence.p, known.pTOST, 1e-9)
  expect(body.noWorse).toEqual({ upper: body.equivalence.upper, holds: true })
  expect(body.welch).toBe(true)
  expect(body.method).toContain('Welch')
})

test('pooled and paired are said in the method', async () => {
  const pooled = await calculate('two-samples', { a, b, pooled: true })
  expectClose(pooled.body.se, reference.expected.twoSample.pooled.se, 1e-9)
  expect(pooled.body.method).toContain('one spread')
  expect(pooled.body).not.toHaveProperty('equivalence')
  const paired = await calculate('two-samples', { a: [1, 2, 4], b: [2, 4, 5], paired: true })
  expect(paired.body).toMatchObject({ df: 2, welch: false })
})

test('a difference that was not found is not taken for none', async () => {
  const { body } = await calculate('two-samples', { a: [1, 2, 3], b: [2, 4, 5], margin: 1 })
  expect(body.equivalence.equivalent).toBe(false)
  expect(body.cautions).toContain('No difference was found, which does not show that there is none.')
})

test('without spread there is a sentence in every part', async () => {
  const { status, body } = await calculate('two-samples', { a: [1, 1], b: [1, 1], margin: 1 })
  expect(status).toBe(200)
  expect(body).toMatchObject({
    difference: 0,
    unavailable: expect.any(String),
    equivalence: { unavailable: expect.any(String) },
    noWorse: { unavailable: expect.any(String) },
  })
  expect(body).not.toHaveProperty('p')
})

test.each([
  [{ a: [1, 2, 3], b: [1, 2], paired: true }, '#/b'],
  [{ a: [1, 2, 3], b: [] }, '#/b'],
  [{ a: [1, 2, 3] }, '#/b'],
  [{ a: [1, 'x'], b: [1] }, '#/a/1'],
  [{ a: [1, 2], b: [1, 3], margin: 0 }, '#/margin'],
  [{ a: [1, 2], b: [1, 3], level: 95 }, '#/level'],
  [{ a: [1, 2], b: [1, 3], paired: 'yes' }, '#/paired'],
])('%j is refused at %s', async (request, pointer) => {
  const { status, body } = await calculate('two-samples', request)
  expect([status, body.errors[0].pointer]).toEqual([422, pointer])
})
