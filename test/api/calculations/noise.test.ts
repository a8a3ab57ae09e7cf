import { expect, test } from 'vitest'
import { calculate } from '#test/support/calculate.ts'

const at = (L: number, a = 0, b = 0) => ({ L, a, b })
const things = [{ readings: [at(50), at(51)] }, { readings: [at(60, 2), at(62, 2)] }]

// By hand: squares about the means 0.5 and 2, 2 degrees of freedom: SD √1.25 = 1.118; 2.8 × 1.118 = 3.1305.
test('spread, floor and smallest detectable difference of two things read twice', async () => {
  const { status, body } = await calculate('noise', { things })
  expect(status).toBe(200)
  expect(body.sd.L).toBeCloseTo(Math.sqrt(1.25), 12)
  expect(body).toMatchObject({ sd: { a: 0, b: 0 }, df: 2 })
  expect(body.sdd).toBeCloseTo(2.8 * Math.sqrt(1.25), 12)
  expect(body.margin).toBeUndefined()
  // S_L is 1 + 0.015·d² ÷ √(20 + d²), d the mean lightness less 50.
  const one = 1 / (1 + (0.015 * 0.25) / Math.sqrt(20.25))
  const two = 2 / (1 + (0.015 * 121) / Math.sqrt(141))
  expect(body.floor).toBeCloseTo((one + two) / 2, 10)
  expect(body.rms).toBeCloseTo(Math.sqrt((one * one + two * two) / 2), 10)
  expect(body.cautions).toEqual([expect.stringContaining('2 degrees of freedom')])
})

// Domain notes: 0.3 an axis needs 3 or more placings for margin 1.0. Two readings d apart have SD d ÷ √2.
test('the readings that a margin needs, and whether those that are averaged do', async () => {
  const apart = 0.3 * Math.SQRT2
  const known = { things: [{ readings: [at(50), at(50 + apart)] }], margin: 1 }
  const single = await calculate('noise', known)
  expect(single.body.margin).toEqual({ readingsNeeded: 3, enough: false })
  const three = await calculate('noise', { ...known, readingsPerMean: 3 })
  expect(three.body.margin).toEqual({ readingsNeeded: 3, enough: true })
  expect(three.body.sdd).toBeCloseTo(0.84 / Math.sqrt(3), 10)
  expect(three.body.floor).toBeCloseTo(single.body.floor / Math.sqrt(3), 12)
  expect(three.body.method).toContain('divided by √3')
})

test('a floor over a third and over half of the margin is said', async () => {
  const saying = async (margin: number) =>
    (await calculate('noise', { things, margin })).body.cautions.join(' ')
  expect(await saying(10)).not.toContain('floor')
  expect(await saying(3.2)).toContain('third')
  expect(await saying(2)).toContain('half')
})

test('readings without any spread tell nothing', async () => {
  const { status, body } = await calculate('noise', { things: [{ readings: [at(50), at(50)] }], margin: 1 })
  expect(status).toBe(200)
  expect(body.sdd).toEqual({ unavailable: expect.stringContaining('copied or rounded') })
  expect(body.margin).toEqual({ unavailable: expect.any(String) })
})

test('a margin that no number of readings can see has no answer', async () => {
  const { status, body } = await calculate('noise', { things, margin: 1e-300 })
  expect(status).toBe(200)
  expect(body.margin).toEqual({ unavailable: expect.any(String) })
})

test.each([
  [{ things: [] }, '#/things'],
  [{ things: [{ readings: [at(50)] }] }, '#/things/0/readings'],
  [{ things: [{ readings: [at(50), at(101)] }] }, '#/things/0/readings/1/L'],
  [{ things: [{}] }, '#/things/0/readings'],
  [{ things, margin: 0 }, '#/margin'],
  [{ things, readingsPerMean: 0 }, '#/readingsPerMean'],
  [{ things, readingsPerMean: 1.5 }, '#/readingsPerMean'],
  [{ things: [{ readings: new Array(3000).fill(at(50)) }] }, '#/things'],
  [{ things: [{ readings: new Array(1_000_000).fill(0) }] }, '#/things/0/readings'],
  [{ things: new Array(50_000).fill({ readings: [0, 0] }) }, '#/things/0/readings/0'],
])('%# is refused', async (body, pointer) => {
  const answer = await calculate('noise', body)
  expect(answer.status).toBe(422)
  expect(answer.body.errors[0].pointer).toBe(pointer)
  expect(answer.body.errors.length).toBeLessThanOrEqual(200)
})
