import { expect, test } from 'vitest'
import Norris from '#test/reference/stats/nist/Norris.json' with { type: 'json' }
import { calculate } from '#test/support/calculate.ts'
import { expectClose } from '#test/support/close-to.ts'

// NIST Statistical Reference Datasets, certified values
test('the line of Norris', async () => {
  const { status, body } = await calculate('slope', Norris.data)
  expect(status).toBe(200)
  expectClose(body.slope.estimate, Norris.certified.slope.estimate.value, 1e-12)
  expectClose(body.intercept.se, Norris.certified.intercept.sd.value, 1e-10)
  expect(body.df).toBe(34)
})

test('points on a line have no limits and no p', async () => {
  const { body } = await calculate('slope', { x: [1, 2, 3, 4], y: [3, 5, 7, 9] })
  expect(body.slope).toEqual({ estimate: 2, unavailable: expect.stringContaining('exactly on a line') })
  expect(body.intercept).toEqual({ estimate: 1, unavailable: expect.any(String) })
})

test('one point tells no line', async () => {
  const { status, body } = await calculate('slope', { x: [1], y: [3] })
  expect([status, body.df]).toEqual([200, 0])
  expect(body.slope).toEqual({ unavailable: expect.any(String) })
})

test.each([
  [{ x: [1, 2], y: [1] }, '#/y'],
  [{ x: [], y: [] }, '#/x'],
  [{ x: [1, null], y: [1, 2] }, '#/x/1'],
])('%j is refused at %s', async (request, pointer) => {
  const { status, body } = await calculate('slope', request)
  expect([status, body.errors[0].pointer]).toEqual([422, pointer])
})
