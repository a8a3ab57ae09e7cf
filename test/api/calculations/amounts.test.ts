import { expect, test } from 'vitest'
import { calculate } from '#test/support/calculate.ts'

// Dye suppliers' published examples of depth and stock.
test.each([
  [{ fibre: { amount: 125, unit: 'g' }, depthPercent: 2 }, { dyeGrams: 2.5 }],
  [{ fibre: { amount: 0.3, unit: 'kg' }, depthPercent: 3 }, { dyeGrams: 9 }],
  [
    { fibre: { amount: 340, unit: 'g' }, depthPercent: 1, stockPercent: 1 },
    { dyeGrams: 3.4, stockMl: 340 },
  ],
  [
    { fibre: { amount: 2, unit: 'g' }, depthPercent: 2, stockPercent: 0.1 },
    { dyeGrams: 0.04, stockMl: 40 },
  ],
  // Liquor ratio 30:1 on 115 g is 3.45 L: arithmetic example of the reference for acids and units.
  [
    { fibre: { amount: 115, unit: 'g' }, depthPercent: 1, liquorRatio: 30 },
    { dyeGrams: 1.15, bathMl: 3450 },
  ],
])('%j comes to %j', async (request, wanted) => {
  const { status, body } = await calculate('amounts', request)
  expect(status).toBe(200)
  for (const [name, value] of Object.entries(wanted)) expect(body[name]).toBeCloseTo(value, 9)
  expect(Object.keys(body).sort()).toEqual([...Object.keys(wanted), 'cautions', 'method'].sort())
})

test('pounds and ounces are weights too', async () => {
  // 4 oz avoirdupois is 113.398 g.
  const { body } = await calculate('amounts', { fibre: { amount: 4, unit: 'oz' }, depthPercent: 1 })
  expect(body.dyeGrams).toBeCloseTo(1.13398, 5)
})

test('0.3 g on a scale of 0.1 g may be 17 % off, and a stock is better', async () => {
  const request = { fibre: { amount: 15, unit: 'g' }, depthPercent: 2, scaleStepGrams: 0.1 }
  const { body } = await calculate('amounts', request)
  expect(body.weighingErrorPercent).toBeCloseTo(100 / 6, 9)
  expect(body.cautions).toEqual([expect.stringContaining('less than 5 steps of the scale')])
})

test('an undyed control takes no dye, and no weighing error is made up for it', async () => {
  const request = { fibre: { amount: 10, unit: 'g' }, depthPercent: 0, scaleStepGrams: 0.1 }
  const { status, body } = await calculate('amounts', request)
  expect(status).toBe(200)
  expect(body).toMatchObject({
    dyeGrams: 0,
    weighingErrorPercent: { unavailable: expect.any(String) },
    cautions: [],
  })
})

const right = { fibre: { amount: 100, unit: 'g' }, depthPercent: 2 }

test.each([
  [{ fibre: { amount: 0, unit: 'g' } }, '#/fibre/amount'],
  [{ fibre: { amount: -5, unit: 'g' } }, '#/fibre/amount'],
  [{ fibre: { amount: 21, unit: 'kg' } }, '#/fibre/amount'],
  [{ fibre: { amount: '100', unit: 'g' } }, '#/fibre/amount'],
  [{ fibre: { amount: 1, unit: 'cup (US)' } }, '#/fibre/unit'],
  [{ fibre: { amount: 1, unit: 'skein' } }, '#/fibre/unit'],
  [{ fibre: { amount: 1 } }, '#/fibre/unit'],
  [{ fibre: 100 }, '#/fibre'],
  [{ depthPercent: 15.1 }, '#/depthPercent'],
  [{ depthPercent: null }, '#/depthPercent'],
  [{ stockPercent: 0 }, '#/stockPercent'],
  [{ stockPercent: 25 }, '#/stockPercent'],
  [{ liquorRatio: 0.4 }, '#/liquorRatio'],
  [{ scaleStepGrams: 0 }, '#/scaleStepGrams'],
])('%j is refused at its place', async (change, pointer) => {
  const { status, body } = await calculate('amounts', { ...right, ...change })
  expect(status).toBe(422)
  expect(body.errors).toEqual([{ pointer, detail: expect.any(String) }])
})

test('a refusal names the range and what was probably meant', async () => {
  const { body } = await calculate('amounts', { ...right, depthPercent: 20 })
  expect(body.errors[0].detail).toBe('Depth of shade 20 % owf is outside 0–15 % owf. Did you mean 2?')
})
