import { expect, test } from 'vitest'
import reference from '#test/reference/stats/nls-saturation-steam.json' with { type: 'json' }
import { calculate } from '#test/support/calculate.ts'
import { expectClose } from '#test/support/close-to.ts'

const { x: time, y: value } = reference.data

// R 4.2.2: test/reference/stats/nls-saturation-steam.json
test('the curve with its limits and the time to the margin', async () => {
  const { status, body } = await calculate('saturation', { time, value, margin: 0.5 })
  expect(status).toBe(200)
  expect(body.converged).toBe(true)
  expectClose(body.k.upper, reference.expected.profileCI95.k.upper, 1e-7)
  expectClose(body.timeToMargin.lower, reference.expected.timeToWithinMargin.profileLower95, 1e-7)
  expect(body.k).not.toHaveProperty('upperUnbounded')
  const without = await calculate('saturation', { time, value })
  expect(without.body).not.toHaveProperty('timeToMargin')
})

test('a limit that is not there is null and says so', async () => {
  const { body } = await calculate('saturation', {
    time: [0, 0, 5, 5, 10, 10, 15, 15],
    value: [10.2, 9.8, 8.3, 7.6, 6.4, 5.9, 5.3, 4.4],
    margin: 0.5,
  })
  expect(body.timeToMargin).toMatchObject({ upper: null, upperUnbounded: true })
  expect(body.cautions.join(' ')).toContain('A straight line cannot be ruled out')
})

test('no finite curve is an answer', async () => {
  const { status, body } = await calculate('saturation', { time: [1, 2, 3], value: [3, 2, 1] })
  expect(status).toBe(200)
  expect(body).toMatchObject({ converged: false, unavailable: expect.stringContaining('straight line') })
  expect(body.method).toContain('profile likelihood')
})

test('a curve that starts within the margin is said to', async () => {
  const { body } = await calculate('saturation', { time, value, margin: 9 })
  expect(body.timeToMargin.estimate).toBeLessThan(0)
  expect(body.cautions.join(' ')).toContain('within the margin of its plateau from the start')
})

test.each([
  [{ time: [1, 2], value: [1] }, '#/value'],
  [{ time: [-1, 2], value: [1, 2] }, '#/time/0'],
  [{ time: [], value: [] }, '#/time'],
  [{ time: [1, 2, '3'], value: [1, 2, 3] }, '#/time/2'],
  [{ time: [1, 2, 3], value: [1, 2, 3], margin: -1 }, '#/margin'],
])('%j is refused at %s', async (request, pointer) => {
  const { status, body } = await calculate('saturation', request)
  expect([status, body.errors[0].pointer]).toEqual([422, pointer])
})
