import { expect, test } from 'vitest'
import greyScale from '#test/reference/colour/grey-scale.json' with { type: 'json' }
import { calculate } from '#test/support/calculate.ts'
import { labOf } from '#test/support/lab-of.ts'

// Worked examples of two separately written programs (the file's note).
test('changes in colour by the A05 formula', async () => {
  const { examples, tolerance } = greyScale.a05_instrumental_change
  const { status, body } = await calculate('fastness-grade', {
    scale: 'change',
    pairs: examples.map((one) => ({ reference: labOf(one.lab_original), sample: labOf(one.lab_tested) })),
  })
  expect(status).toBe(200)
  expect(body).toMatchObject({ method: expect.stringContaining('A05 formula'), cautions: [] })
  for (const [i, one] of examples.entries()) {
    const found = body.results[i]
    expect(Math.abs(found.dE76 - one.dE)).toBeLessThanOrEqual(tolerance)
    expect(Math.abs(found.difference - one.dEF)).toBeLessThanOrEqual(tolerance)
    expect(Math.abs(found.rating - one.gsc)).toBeLessThanOrEqual(tolerance)
    expect(found.grade).toBe(one.band)
  }
})

test('staining by the A04 formula', async () => {
  const { examples, tolerance } = greyScale.a04_instrumental_staining
  const { body } = await calculate('fastness-grade', {
    scale: 'staining',
    pairs: examples.map((one) => ({ reference: labOf(one.lab_unstained), sample: labOf(one.lab_stained) })),
  })
  for (const [i, one] of examples.entries()) {
    const found = body.results[i]
    expect(Math.abs(found.difference - one.dEGS)).toBeLessThanOrEqual(tolerance)
    expect(Math.abs(found.rating - one.ssr)).toBeLessThanOrEqual(tolerance)
    expect(found.grade).toBe(one.band)
  }
})

const grey = { L: 50, a: 0, b: 0 }

test.each([
  [{ pairs: [{ reference: grey, sample: grey }] }, '#/scale'],
  [{ pairs: [{ reference: grey, sample: grey }], scale: 'light' }, '#/scale'],
  [{ pairs: [{ reference: grey, sample: { ...grey, L: 101 } }], scale: 'change' }, '#/pairs/0/sample/L'],
  [{ pairs: [{ reference: grey }], scale: 'change' }, '#/pairs/0/sample'],
  [{ pairs: new Array(2000).fill({ reference: grey, sample: 1 }), scale: 'change' }, '#/pairs/0/sample'],
])('%# is refused', async (body, pointer) => {
  const answer = await calculate('fastness-grade', body)
  expect(answer.status).toBe(422)
  expect(answer.body.errors[0].pointer).toBe(pointer)
})
