import { expect, test } from 'vitest'
import { calculate } from '#test/support/calculate.ts'
import reference from '../../reference/colour/strength-exhaustion.json' with { type: 'json' }

const simple = { absorbanceStart: 0.8, absorbanceEnd: 0.2, volumeStart: 1, volumeEnd: 1 }

test.each(reference.exhaustion.examples)('$name: $exhaustion_percent %', async (it) => {
  const { status, body } = await calculate('exhaustion', {
    absorbanceStart: it.A_start,
    absorbanceEnd: it.A_end,
    dilutionStart: it.dilution_start,
    dilutionEnd: it.dilution_end,
    volumeStart: it.volume_start_L,
    volumeEnd: it.volume_end_L,
  })
  expect(status).toBe(200)
  expect(Math.abs(body.exhaustionPercent - it.exhaustion_percent)).toBeLessThan(reference.tolerance)
})

test('undiluted is what is meant when no dilution is given', async () => {
  const { body } = await calculate('exhaustion', simple)
  expect(body).toMatchObject({ exhaustionPercent: 75, cautions: [], method: expect.stringContaining('E %') })
})

test('more dye than there was comes out below zero, with a caution', async () => {
  const { body } = await calculate('exhaustion', { ...simple, absorbanceEnd: 0.9 })
  expect(body.exhaustionPercent).toBeCloseTo(-12.5, 10)
  expect(body.cautions).toEqual([expect.stringContaining('More dye is left than there was')])
})

test.each([
  [{ absorbanceStart: 0 }, '#/absorbanceStart'],
  [{ absorbanceStart: '0.8' }, '#/absorbanceStart'],
  [{ absorbanceEnd: -0.1 }, '#/absorbanceEnd'],
  [{ dilutionEnd: 0.1 }, '#/dilutionEnd'],
  [{ volumeStart: 0 }, '#/volumeStart'],
  [{ volumeEnd: null }, '#/volumeEnd'],
])('%j is refused at its place', async (change, pointer) => {
  const { status, body } = await calculate('exhaustion', { ...simple, ...change })
  expect(status).toBe(422)
  expect(body.errors).toEqual([{ pointer, detail: expect.any(String) }])
})

test('figures beyond reckoning have no answer, and say so', async () => {
  const { status, body } = await calculate('exhaustion', {
    ...simple,
    absorbanceEnd: 1e300,
    dilutionEnd: 1e300,
  })
  expect(status).toBe(200)
  expect(body.exhaustionPercent).toEqual({ unavailable: expect.any(String) })
})
