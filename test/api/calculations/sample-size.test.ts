import { expect, test } from 'vitest'
import reference from '#test/reference/stats/power-sample-size.json' with { type: 'json' }
import { calculate } from '#test/support/calculate.ts'
import { expectClose } from '#test/support/close-to.ts'

const { expected } = reference

// R 4.2.2: test/reference/stats/power-sample-size.json
test('units a group for a difference, and the power of a given number', async () => {
  for (const { delta, sd, power, nPerGroup } of expected.nForTwoSampleT) {
    const { body } = await calculate('sample-size', { kind: 'difference', effect: delta, sd, power })
    expect(body.n).toBe(nPerGroup)
    expect(body.power).toBeGreaterThanOrEqual(power)
  }
  const [known] = expected.twoSampleT
  const { body } = await calculate('sample-size', { kind: 'difference', effect: 1, sd: 0.6, n: 5 })
  expect(body.n).toBe(5)
  expectClose(body.power, known!.powerTwoSided, 1e-9)
})

test('pairs that show no worse, and groups', async () => {
  for (const row of expected.pairedT) {
    const question = { kind: 'no-worse', effect: row.delta, sd: row.sdOfDifferences, paired: true }
    const { body } = await calculate('sample-size', question)
    expect(body.n).toBe(row.nPairsFor80NoWorse)
  }
  for (const row of expected.anova) {
    const { body } = await calculate('sample-size', { kind: 'groups', means: row.means, sd: row.sd })
    expect(body.n).toBe(row.nFor80)
  }
})

test('nothing to find, and too little to find, have no number', async () => {
  for (const question of [
    { kind: 'difference', effect: 0, sd: 1 },
    { kind: 'no-worse', effect: -0.2, sd: 1 },
    { kind: 'groups', means: [2, 2, 2], sd: 1 },
    { kind: 'difference', effect: 1e-9, sd: 1 },
  ]) {
    const { status, body } = await calculate('sample-size', question)
    expect(status).toBe(200)
    expect(body.n).toEqual({ unavailable: expect.any(String) })
    expect(body.power).toEqual({ unavailable: expect.any(String) })
  }
})

test('an effect beyond all bounds is found with two', async () => {
  const { body } = await calculate('sample-size', { kind: 'difference', effect: 1e90, sd: 1e-90 })
  expect(body).toMatchObject({ n: 2, power: 1 })
})

test.each([
  [{ kind: 'difference', sd: 1 }, '#/effect'],
  [{ kind: 'groups', sd: 1 }, '#/means'],
  [{ kind: 'groups', sd: 1, means: [1] }, '#/means'],
  [{ kind: 'difference', effect: 1, sd: 0 }, '#/sd'],
  [{ kind: 'difference', effect: 1, sd: 1, n: 1 }, '#/n'],
  [{ kind: 'difference', effect: 1, sd: 1, n: 2.5 }, '#/n'],
  [{ kind: 'difference', effect: 1, sd: 1, power: 1 }, '#/power'],
  [{ kind: 'equivalence', effect: 1, sd: 1 }, '#/kind'],
])('%j is refused at %s', async (request, pointer) => {
  const { status, body } = await calculate('sample-size', request)
  expect([status, body.errors[0].pointer]).toEqual([422, pointer])
})
