import { expect, test } from 'vitest'
import reference from '#test/reference/stats/hotelling-lab.json' with { type: 'json' }
import { calculate } from '#test/support/calculate.ts'
import { expectClose } from '#test/support/close-to.ts'

const before = reference.data.groupB.map(() => ({ L: 45, a: 20, b: -10 }))
const after = reference.data.groupB.map(({ dL, da, db }) => ({ L: 45 + dL, a: 20 + da, b: -10 + db }))

// test/reference/stats/hotelling-lab.json
test('the shift of seven skeins', async () => {
  const { status, body } = await calculate('colour-shift', { before, after })
  const known = reference.expected.oneSampleB
  expect(status).toBe(200)
  expectClose(body.hotelling.p, known.pValue, 1e-9)
  expectClose(body.intervals.db[0], known.intervals.db.tLower95, 1e-8)
  expectClose(body.simultaneous.db[1], known.intervals.db.simultaneousUpper95, 1e-8)
  expect(body.mcdm.before).toBe(0)
  expect(body.cautions).toEqual([])
})

test('with four pairs T² is given with a caution, with three it is not given', async () => {
  const four = await calculate('colour-shift', { before: before.slice(0, 4), after: after.slice(0, 4) })
  expect(four.body.hotelling.df2).toBe(1)
  expect(four.body.cautions[0]).toContain('hardly ever')
  const three = await calculate('colour-shift', { before: before.slice(0, 3), after: after.slice(0, 3) })
  expect(three.body.hotelling).toHaveProperty('unavailable')
  expect(three.body.intervals.dL).toHaveLength(2)
})

test('copied readings have no spread', async () => {
  const { status, body } = await calculate('colour-shift', { before, after: before })
  expect(status).toBe(200)
  expect(body.dE00OfMeans).toBe(0)
  expect(body.hotelling.unavailable).toContain('equal')
})

test.each([
  [{ before, after: after.slice(1) }, '#/after'],
  [{ before: [], after: [] }, '#/before'],
  [{ before: [{ L: 101, a: 0, b: 0 }], after: [{ L: 1, a: 0, b: 0 }] }, '#/before/0/L'],
])('wrong lists are refused where they stand', async (request, pointer) => {
  const { status, body } = await calculate('colour-shift', request)
  expect([status, body.errors[0].pointer]).toEqual([422, pointer])
})
