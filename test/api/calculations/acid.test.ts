import fc from 'fast-check'
import { expect, test } from 'vitest'
import { calculate } from '#test/support/calculate.ts'
import reference from '../../reference/colour/units-acids.json' with { type: 'json' }

test.each(reference.pH_examples)('$name reads $pH_ideal', async (it) => {
  const { status, body } = await calculate('acid', {
    acidsMolPerL: it.acids_mol_per_L,
    alkalinityMolPerL: it.alkalinity_mol_per_L,
  })
  expect(status).toBe(200)
  expect(Math.abs(body.pH - it.pH_ideal)).toBeLessThan(reference.tolerance.pH_ideal)
  expect(body.notAcid).toBe(body.pHHeated > 7)
  expect(body.molPerL).toEqual({ acetic: 0, citric: 0, ...it.acids_mol_per_L })
})

test('kitchen measures come to the concentrations and the pH of the reference', async () => {
  const cup = { kind: 'acetic', amount: 1, unit: 'cup (US)' }
  const { body } = await calculate('acid', { acids: [cup], bath: { amount: 1, unit: 'gallon (US)' } })
  expect(body.molPerL.acetic).toBeCloseTo(0.052038, 6)
  expect(body.pH).toBeCloseTo(3.0243, 3)
  const spoons = { kind: 'acetic', amount: 2, unit: 'tbsp (metric)' }
  const hard = await calculate('acid', { acids: [spoons], bath: { amount: 8, unit: 'L' }, alkalinity: 250.2 })
  expect(hard.body.pH).toBeCloseTo(6.1735, 2)
  expect(hard.body.notAcid).toBe(true)
})

test('citric acid with and without its water is weighed differently', async () => {
  const bath = { amount: 4, unit: 'L' }
  const moles = async (kind: string) =>
    (await calculate('acid', { acids: [{ kind, amount: 5, unit: 'g' }], bath })).body.molPerL.citric
  // 5 g of monohydrate in 4 L: 0.005948 mol/L; anhydrous by its molar mass of 192.124.
  expect(await moles('citric-monohydrate')).toBeCloseTo(0.005948, 6)
  expect(await moles('citric')).toBeCloseTo(5 / 192.124 / 4, 9)
})

test('a solution of citric acid holds its strength in grams in 100 mL', async () => {
  const solution = { kind: 'citric', amount: 100, unit: 'mL', strengthPercent: 10 }
  const { body } = await calculate('acid', { acids: [solution], bath: { amount: 10, unit: 'L' } })
  expect(body.molPerL.citric).toBeCloseTo(10 / 192.124 / 10, 9)
})

test('with the fibre comes the vinegar of 5 % for each 100 g', async () => {
  const bath = { amount: 10, unit: 'L' }
  // 1 US cup to the pound: 52.2 mL for 100 g (NIST volumes). 100 mL of 10 % is 200 mL of 5 %.
  const cup = {
    acids: [{ kind: 'acetic', amount: 1, unit: 'cup (US)' }],
    bath,
    fibre: { amount: 1, unit: 'lb' },
  }
  expect((await calculate('acid', cup)).body.mLVinegar5Per100g).toBeCloseTo(52.159, 3)
  const strong = { kind: 'acetic', amount: 100, unit: 'mL', strengthPercent: 10 }
  const two = await calculate('acid', { acids: [strong], bath, fibre: { amount: 200, unit: 'g' } })
  expect(two.body.mLVinegar5Per100g).toBeCloseTo(100, 9)
  expect((await calculate('acid', { acids: [strong], bath })).body).not.toHaveProperty('mLVinegar5Per100g')
})

test('too little acid for the water is said, whatever the cold bath reads', async () => {
  const acids = [{ kind: 'acetic', amount: 4, unit: 'mL' }]
  const { body } = await calculate('acid', { acids, bath: { amount: 1, unit: 'L' }, alkalinity: 300 })
  expect(body.pH).toBeCloseTo(6.3, 1)
  expect(body.pHHeated).toBeGreaterThan(11)
  expect(body.notAcid).toBe(true)
  expect(body.cautions.at(-1)).toContain('Not acid')
})

test('water without any acid is worked out too', async () => {
  const { body } = await calculate('acid', { acids: [], bath: { amount: 1, unit: 'L' }, alkalinity: 0 })
  expect(body.pH).toBeCloseTo(reference.acids.pKw_25C / 2, 4)
})

const right = { acids: [{ kind: 'acetic', amount: 50, unit: 'mL' }], bath: { amount: 3, unit: 'L' } }
const oneAcid = (change: object) => ({ acids: [{ kind: 'acetic', amount: 50, unit: 'mL', ...change }] })

test.each<[object, string]>([
  [oneAcid({ kind: 'oxalic' }), '#/acids/0/kind'],
  [oneAcid({ amount: '50' }), '#/acids/0/amount'],
  [oneAcid({ amount: -1 }), '#/acids/0/amount'],
  [oneAcid({ unit: 'cup' }), '#/acids/0/unit'],
  [oneAcid({ unit: 'oz' }), '#/acids/0/unit'],
  [oneAcid({ unit: 'bucket' }), '#/acids/0/unit'],
  [oneAcid({ strengthPercent: 80 }), '#/acids/0/strengthPercent'],
  [oneAcid({ strengthPercent: 0 }), '#/acids/0/strengthPercent'],
  [oneAcid({ kind: 'citric' }), '#/acids/0/unit'],
  [oneAcid({ amount: 1e300, unit: 'L' }), '#/acids'],
  [{ ...oneAcid({ amount: 2, unit: 'L' }), fibre: { amount: 100, unit: 'g' } }, '#/acids/0/amount'],
  [{ bath: { amount: 0, unit: 'L' } }, '#/bath/amount'],
  [{ bath: { amount: 501, unit: 'L' } }, '#/bath/amount'],
  [{ bath: { amount: 3, unit: 'kg' } }, '#/bath/unit'],
  [{ bath: undefined }, '#/bath'],
  [{ acids: undefined }, '#/acids'],
  [{ alkalinity: -1 }, '#/alkalinity'],
  [{ alkalinity: 1501 }, '#/alkalinity'],
  [{ fibre: { amount: 0, unit: 'g' } }, '#/fibre/amount'],
  [{ fibre: { amount: 1, unit: 'mL' } }, '#/fibre/unit'],
  [{ alkalinityMolPerL: 0.001 }, '#/alkalinityMolPerL'],
])('%j is refused at its place', async (change, pointer) => {
  const { status, body } = await calculate('acid', { ...right, ...change })
  expect(status).toBe(422)
  expect(body.errors).toEqual([{ pointer, detail: expect.any(String) }])
})

test('amounts and concentrations are not given together', async () => {
  const { status, body } = await calculate('acid', { ...right, acidsMolPerL: { acetic: 0.1 } })
  expect(status).toBe(422)
  expect(body.errors.map((it: { pointer: string }) => it.pointer)).toEqual(['#/acids', '#/bath'])
})

test('nothing at all lacks both the acids and the bath', async () => {
  const { status, body } = await calculate('acid', {})
  expect(status).toBe(422)
  expect(body.errors.map((it: { pointer: string }) => it.pointer)).toEqual(['#/acids', '#/bath'])
})

test('whatever body is sent is answered or refused, with numbers that are finite', async () => {
  const amount = fc.record({
    amount: fc.double(),
    unit: fc.constantFrom('mL', 'L', 'g', 'cup (US)', 'cup', ''),
  })
  const anAcid = fc.record({
    kind: fc.constantFrom('acetic', 'citric', 'citric-monohydrate', 'x'),
    amount: fc.double({ min: 0 }),
    unit: fc.constantFrom('mL', 'L', 'g'),
    strengthPercent: fc.option(fc.double({ min: 0, max: 20 }), { nil: undefined }),
  })
  const aBody = fc.oneof(
    // Text is sent as it is, and may be no JSON: that is a test of its own.
    fc.jsonValue().filter((value) => typeof value !== 'string'),
    fc.record(
      { acids: fc.array(anAcid), bath: amount, alkalinity: fc.double(), fibre: amount },
      { requiredKeys: [] },
    ),
    fc.record({ acids: fc.array(anAcid), bath: fc.constant({ amount: 3, unit: 'L' }) }),
  )
  await fc.assert(
    fc.asyncProperty(aBody, async (sent) => {
      const { status, body } = await calculate('acid', sent)
      expect([200, 422]).toContain(status)
      if (status === 200) expect([body.pH, body.pHHeated].every(Number.isFinite)).toBe(true)
    }),
  )
})
