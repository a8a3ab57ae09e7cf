import { describe, expect, test } from 'vitest'
import sharma2005 from '#test/reference/colour/ciede2000-sharma.json' with { type: 'json' }
import textilePairs from '#test/reference/colour/colour-difference-pairs.json' with { type: 'json' }
import { calculate } from '#test/support/calculate.ts'
import { labOf } from '#test/support/lab-of.ts'

const pairs = textilePairs.pairs.map(({ lab_ref, lab_sample }) => ({
  reference: labOf(lab_ref),
  sample: labOf(lab_sample),
}))
const grey = { L: 50, a: 0, b: 0 }

// Four libraries agree on these to 3e-6 (the file's note).
test('the pairs of the reference file, in their order, by every formula', async () => {
  const { status, body } = await calculate('colour-difference', { pairs })
  expect(status).toBe(200)
  expect(body).toMatchObject({ method: expect.stringContaining('CMC(2:1)'), cautions: [] })
  for (const [i, pair] of textilePairs.pairs.entries()) {
    const printed = {
      dL: pair.dL,
      da: pair.da,
      db: pair.db,
      dC: pair.dC,
      dH: pair.dH_signed,
      hReference: pair.h_ref,
      hSample: pair.h_sample,
      dE76: pair.de76,
      dE94: pair.de94_textiles,
      dECmc: pair.cmc_2_1,
      dE00: pair.de00,
    }
    for (const [name, value] of Object.entries(printed))
      expect(Math.abs(body.results[i][name] - value), `${pair.name} ${name}`).toBeLessThanOrEqual(1e-4)
  }
})

test('the weights of CMC and the use of CIE94 may be chosen', async () => {
  const { body } = await calculate('colour-difference', { pairs, cmc: { l: 1, c: 1 }, cie94: 'graphic' })
  for (const [i, pair] of textilePairs.pairs.entries()) {
    expect(body.results[i].dECmc).toBeCloseTo(pair.cmc_1_1, 4)
    expect(body.results[i].dE94).toBeCloseTo(pair.de94_graphic, 4)
  }
})

// Sharma, Wu and Dalal (2005), table 1.
test('the 34 published pairs', async () => {
  const { body } = await calculate('colour-difference', {
    pairs: sharma2005.pairs.map(({ lab1, lab2 }) => ({ reference: labOf(lab1), sample: labOf(lab2) })),
  })
  for (const [i, { de00 }] of sharma2005.pairs.entries())
    expect(Math.abs(body.results[i].dE00 - de00)).toBeLessThanOrEqual(5e-5)
})

test('the way of a change is said in bare words; a grey has hue 0', async () => {
  const { body } = await calculate('colour-difference', {
    pairs: [
      { reference: { L: 45, a: 25, b: -7 }, sample: { L: 47, a: 22, b: -6 } },
      { reference: grey, sample: grey },
    ],
  })
  expect(body.results[0].words).toEqual(['lighter', 'duller'])
  expect(body.results[1]).toMatchObject({ words: [], hReference: 0, hSample: 0, dE00: 0, dH: 0 })
})

describe('refusals', () => {
  const refused = async (body: unknown, pointer: string) => {
    const answer = await calculate('colour-difference', body)
    expect(answer.status).toBe(422)
    expect(answer.body.errors.map((fault: { pointer: string }) => fault.pointer)).toContain(pointer)
  }
  const withSample = (sample: unknown) => ({
    pairs: [
      { reference: grey, sample: grey },
      { reference: grey, sample },
    ],
  })

  test.each([
    [withSample({ ...grey, L: 100.1 }), '#/pairs/1/sample/L'],
    [withSample({ ...grey, L: -0.1 }), '#/pairs/1/sample/L'],
    [withSample({ ...grey, a: 127.5 }), '#/pairs/1/sample/a'],
    [withSample({ ...grey, b: -128.5 }), '#/pairs/1/sample/b'],
    [withSample({ ...grey, b: '3' }), '#/pairs/1/sample/b'],
    [withSample({ ...grey, b: null }), '#/pairs/1/sample/b'],
    [withSample({ L: 50, a: 0 }), '#/pairs/1/sample/b'],
    [withSample(null), '#/pairs/1/sample'],
    [withSample([50, 0, 0]), '#/pairs/1/sample'],
    [{ pairs: [null] }, '#/pairs/0'],
    [{ pairs: {} }, '#/pairs'],
    [{}, '#/pairs'],
    [{ pairs, cmc: { l: 0, c: 1 } }, '#/cmc/l'],
    [{ pairs, cmc: { l: 2 } }, '#/cmc/c'],
    [{ pairs, cie94: 'paper' }, '#/cie94'],
  ])('%#: %j', refused)

  // JSON has no NaN, but 1e999 is read as an infinity.
  test('a number that is not finite', () =>
    refused(
      '{"pairs":[{"reference":{"L":50,"a":1e999,"b":0},"sample":{"L":50,"a":0,"b":0}}]}',
      '#/pairs/0/reference/a',
    ))

  test('more than 100,000 pairs', () => refused({ pairs: new Array(100_001).fill(0) }, '#/pairs'))

  test('a body that is no object', async () => {
    for (const body of ['null', '[]', '3', '"x"'])
      expect((await calculate('colour-difference', body)).status).toBe(422)
  })

  test('millions of wrong pairs give no more faults than one refusal carries', async () => {
    const { status, body } = await calculate('colour-difference', `{"pairs":[${'0,'.repeat(99_999)}0]}`)
    expect(status).toBe(422)
    expect(body.errors).toHaveLength(200)
    const many = await calculate('colour-difference', `{"pairs":[${'0,'.repeat(3_000_000)}0]}`)
    expect(many.body.errors).toEqual([
      { pointer: '#/pairs', detail: 'This list takes at most 100000; it has 3000001.' },
    ])
  })

  test('the one wrong pair among many is pointed at', async () => {
    const many = new Array(50_000).fill({ reference: grey, sample: grey })
    many[40_000] = { reference: grey, sample: { ...grey, L: 'x' } }
    await refused({ pairs: many }, '#/pairs/40000/sample/L')
  })
})

test('weights too small to divide by have no answer, and nothing is null', async () => {
  const { status, body } = await calculate(
    'colour-difference',
    `{"pairs":[{"reference":{"L":50,"a":0,"b":0},"sample":{"L":90,"a":9,"b":0}}],"cmc":{"l":1e-320,"c":1}}`,
  )
  expect(status).toBe(200)
  expect(body.results[0].dECmc).toEqual({ unavailable: expect.any(String) })
  expect(JSON.stringify(body)).not.toContain('null')
})

test('no pairs have no results; what is not known is passed over', async () => {
  expect((await calculate('colour-difference', { pairs: [], note: 'hello' })).body).toMatchObject({
    results: [],
  })
})
