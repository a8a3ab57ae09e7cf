import fc from 'fast-check'
import { expect, test } from 'vitest'
import { calculate } from '#test/support/calculate.ts'
import { ladderLimits, steamLadder, twinNoise } from '#test/support/steam-ladder.ts'

const rows = steamLadder().map(({ level, session, value, side }) => ({ level, block: session, value, side }))
const three = (level: number | string, ...values: number[]) =>
  values.map((value, i) => ({ level, block: `day ${i + 1}`, value }))
const plain = [...three(30, 1, 1.1, 0.9), ...three(60, 1, 1, 1.1)]

test('the worked ladder is answered to the digits shown', async () => {
  // domain, section 7
  const { status, body } = await calculate('least-level', {
    rows,
    margin: 1,
    limits: ladderLimits,
    noiseRms: twinNoise.rms,
  })
  expect(status).toBe(200)
  expect(body).toMatchObject({ verdict: 'holds', least: 35, reference: 75, window: { from: 35, to: 35 } })
  expect(body.steps.map((step: { level: number }) => step.level)).toEqual([50, 35, 20, 10, 0])
  const upper = [0.77, 0.5, 1.9, 4.91, 10.52]
  upper.forEach((known, place) => {
    expect(body.steps[place].upper).toBeCloseTo(known, 2)
  })
  expect(body.steps[0].net.upper).toBeCloseTo(0.8, 2)
  expect(body.steps[1].net.upper).toBeCloseTo(0.53, 2)
  expect(body.steps[2].limits[0]).toEqual({ side: 'stain', worst: 3, met: false, missing: 0 })
  expect(body.method).toContain('Paired t')
  expect(body.cautions).toEqual([])
  expect(body.blocksNeeded).toEqual({ unavailable: expect.any(String) })
})

test('no shorter level that holds is null, and the window says why it is none', async () => {
  const { body } = await calculate('least-level', {
    rows: [...three(30, 4, 4.2, 4.1), ...three(60, 1, 1, 1.1)],
    margin: 1,
  })
  expect(body).toMatchObject({
    verdict: 'does-not-hold',
    least: null,
    window: { unavailable: expect.any(String) },
  })
})

test('one session has an extra loss and no limits', async () => {
  const { status, body } = await calculate('least-level', {
    rows: [...three(30, 4), ...three(60, 1)],
    margin: 1,
  })
  expect(status).toBe(200)
  expect(body.steps[0]).toMatchObject({
    n: 1,
    extra: 3,
    se: { unavailable: expect.any(String) },
    answer: 'not-settled',
  })
})

test('rows without blocks are compared as independent units', async () => {
  const free = plain.map(({ level, value }) => ({ level, value }))
  const { body } = await calculate('least-level', { rows: free, margin: 1 })
  expect(body.steps[0]).toMatchObject({ n: 3, df: 4 })
  expect(body.method).toContain('common variance')
})

test('levels in words are judged in the order that is given', async () => {
  const words = [...three('short', 1, 1.1, 0.9), ...three('long', 1, 1, 1.1)]
  const { body } = await calculate('least-level', { rows: words, order: ['short', 'long'], margin: 1 })
  expect(body).toMatchObject({ verdict: 'holds', least: 'short', reference: 'long' })
})

test('figures too large to reckon with are unavailable, not NaN', async () => {
  const { status, body } = await calculate('least-level', {
    rows: [...three(30, 1e308, -1e308, 1e308), ...three(60, -1e308, 1e308, -1e308)],
    margin: 1,
    noiseRms: 1,
  })
  expect(status).toBe(200)
  expect(body.verdict).toBe('not-settled')
  expect(body.steps[0].upper).toHaveProperty('unavailable')
})

const refusals: [string, Record<string, unknown>, string][] = [
  ['a margin of 0', { margin: 0 }, '#/margin'],
  ['a missing margin', { margin: undefined }, '#/margin'],
  ['a level twice in the order', { order: [30, 60, 30] }, '#/order/2'],
  ['a level that is not in the order', { order: [20, 60] }, '#/rows/0/level'],
  ['a reference that is no level', { reference: 45 }, '#/reference'],
  ['text levels without an order', { rows: three('long', 1, 2, 3) }, '#/order'],
  ['text where a number belongs', { rows: [{ level: 30, block: 1, value: '1,2' }] }, '#/rows/0/value'],
  ['a value that is blank', { rows: [{ level: 30, block: 1, value: null }] }, '#/rows/0/value'],
  [
    'a side result in words',
    { rows: [{ level: 30, value: 1, side: { stain: '3-4' } }] },
    '#/rows/0/side/stain',
  ],
  ['no rows', { rows: [] }, '#/rows'],
  ['a confidence of 1', { confidence: 1 }, '#/confidence'],
  ['an unknown method', { method: 'unpaired' }, '#/method'],
  ['an unknown direction', { direction: 'up' }, '#/direction'],
  ['a negative noise', { noiseRms: -1 }, '#/noiseRms'],
  ['a planned spread of 0', { sdPlanned: 0 }, '#/sdPlanned'],
  ['a limit without a limit', { limits: [{ side: 'stain' }] }, '#/limits/0'],
  [
    'a row without the block that others have',
    { rows: [...plain, { level: 30, value: 1 }] },
    '#/rows/6/block',
  ],
  ['a method that needs blocks', { rows: [{ level: 30, value: 1 }], method: 'model' }, '#/rows/0/block'],
  [
    'more than 64 levels',
    { rows: Array.from({ length: 65 }, (_, level) => ({ level, value: 1 })) },
    '#/rows',
  ],
  [
    'more than 20,000 rows',
    { rows: Array.from({ length: 20_001 }, () => ({ level: 1, value: 1 })) },
    '#/rows',
  ],
]

test.each(refusals)('%s is refused with its place', async (_, change, pointer) => {
  const { status, body } = await calculate('least-level', { rows: plain, margin: 1, ...change })
  expect(status).toBe(422)
  expect(body.errors[0].pointer).toBe(pointer)
  expect(body.errors[0].detail).not.toBe('')
})

/** Every number of an answer, and every null with its path. */
function* leaves(it: unknown, path: string): Generator<readonly [string, unknown]> {
  if (typeof it === 'object' && it !== null)
    for (const [key, value] of Object.entries(it)) yield* leaves(value, `${path}/${key}`)
  else yield [path, it]
}

test('whatever finite numbers come in, the answer has a verdict and no null but a missing least level', async () => {
  const odd = fc.oneof(
    { weight: 3, arbitrary: fc.double({ min: 0, max: 12, noNaN: true }) },
    { weight: 1, arbitrary: fc.constantFrom(0, -0, 1, 1e308, -1e308, 1e-308, 5e-324, 1e154) },
  )
  const above = fc.oneof(
    fc.double({ min: 1e-3, max: 10, noNaN: true }),
    fc.constantFrom(1e308, 1e-308, 5e-324),
  )
  const body = fc.record(
    {
      rows: fc.array(
        fc.record({
          level: fc.constantFrom(0, 10, 20, 75),
          block: fc.constantFrom('a', 'b', 'c', 'd', 'e'),
          vessel: fc.constantFrom('1', '2'),
          value: odd,
          side: fc.record({ stain: odd }, { requiredKeys: [] }),
        }),
        { minLength: 1, maxLength: 40 },
      ),
      margin: above,
      confidence: fc.constantFrom(0.01, 0.5, 0.9, 0.95, 0.999_999),
      direction: fc.constantFrom('smaller-is-better', 'larger-is-better'),
      method: fc.constantFrom('paired', 'model', 'pooled'),
      noiseRms: odd.map(Math.abs),
      sdPlanned: above,
      limits: fc.array(
        fc.record({
          side: fc.constantFrom('stain', 'felt'),
          atLeast: odd,
          end: fc.constantFrom('low', 'high'),
        }),
        { maxLength: 2 },
      ),
    },
    { requiredKeys: ['rows', 'margin'] },
  )
  await fc.assert(
    fc.asyncProperty(body, async (it) => {
      const { status, body: answer } = await calculate('least-level', it)
      expect(status).toBe(200)
      expect(['holds', 'does-not-hold', 'not-settled']).toContain(answer.verdict)
      expect(answer.least === null).toBe(answer.verdict !== 'holds')
      for (const [path, leaf] of leaves(answer, '')) if (path !== '/least') expect(leaf, path).not.toBeNull()
    }),
    { numRuns: 200, seed: 7 },
  )
})
