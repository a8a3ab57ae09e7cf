import { expect, test } from 'vitest'
import unbalanced from '#test/reference/stats/oneway-unbalanced-acid.json' with { type: 'json' }
import { calculate } from '#test/support/calculate.ts'
import { expectClose } from '#test/support/close-to.ts'

// biome-ignore lint/suspicious/noExplicitAny: a test reads whatever comes back
type Found = any
const groups = unbalanced.data.groups.map(({ level, y }) => ({ label: level, values: y }))
const asked = async (body: unknown): Promise<Found> => {
  const { status, body: found } = await calculate('groups', body)
  expect(status).toBe(200)
  return found
}

// R 4.2.2: test/reference/stats/oneway-unbalanced-acid.json
test('groups come back by their labels, in the order given', async () => {
  const found = await asked({ groups, reference: 'none' })
  const { expected } = unbalanced
  expect(found.summaries.map(({ label }: Found) => label)).toEqual(groups.map(({ label }) => label))
  expectClose(found.anova.p, expected.classic.p, 1e-9)
  expectClose(found.welch.p, expected.welch.p, 1e-9)
  expect(found.tukey).toHaveLength(10)
  for (const known of expected.tukey.pairs) {
    const pair = found.tukey.find(({ a, b }: Found) => a === known.a && b === known.b)
    expectClose(pair.p, known.p, 1e-8)
  }
  for (const known of expected.dunnett.twoSided.comparisons) {
    const pair = found.dunnett.find(({ b }: Found) => b === known.b)
    expect(pair.a).toBe('none')
    expectClose(pair.lower, known.lower, 1e-8)
  }
  expect(found.method).toContain('Games–Howell')
})

test('a wider confidence gives wider intervals', async () => {
  const [narrow, wide] = await Promise.all([asked({ groups, level: 0.9 }), asked({ groups, level: 0.99 })])
  expect(wide.tukey[0].upper).toBeGreaterThan(narrow.tukey[0].upper)
  expect(wide.summaries[0].lower).toBeLessThan(narrow.summaries[0].lower)
  expect(narrow).not.toHaveProperty('dunnett')
})

test('few values, a group of one and unequal spreads are said', async () => {
  const { cautions } = await asked({
    groups: [
      { label: 'a', values: [1, 2, 3] },
      { label: 'b', values: [1, 20, 40] },
      { label: 'c', values: [5] },
    ],
  })
  expect(cautions.join(' ')).toMatch(/one value alone.*fewer than 8.*rough.*more than three times/)
})

test('one group alone has nothing to be compared with', async () => {
  const found = await asked({ groups: groups.slice(0, 1), reference: 'none' })
  for (const part of ['anova', 'welch', 'kruskalWallis', 'brownForsythe', 'tukey', 'gamesHowell', 'dunnett'])
    expect(found[part]).toEqual({ unavailable: expect.stringContaining('One group alone') })
})

test('equal values keep their differences and get a sentence', async () => {
  const found = await asked({
    groups: [
      { label: 'a', values: [2, 2] },
      { label: 'b', values: [5, 5] },
    ],
  })
  expect(found.tukey).toEqual([{ a: 'a', b: 'b', difference: 3, unavailable: expect.any(String) }])
})

test('values too small to be squared are not taken for equal', async () => {
  const found = await asked({
    groups: [
      { label: 'a', values: [1e-200, 2e-200] },
      { label: 'b', values: [4e-200, 2e-200] },
    ],
  })
  expect(found.summaries[0].sd.unavailable).toContain('too near one another')
  expect(found.anova).toHaveProperty('unavailable')
})

test.each([
  [
    'a label twice',
    [
      { label: 'a', values: [1, 2] },
      { label: 'a', values: [2, 3] },
    ],
    '#/groups/1/label',
  ],
  ['text', [{ label: 'a', values: [1, '2'] }], '#/groups/0/values/1'],
  ['nothing in a group', [{ label: 'a', values: [] }], '#/groups/0/values'],
  ['no group', [], '#/groups'],
  ['a number too large', [{ label: 'a', values: [1e308, 2] }], '#/groups/0/values/0'],
  ['65 groups', Array.from({ length: 65 }, (_, i) => ({ label: `${i}`, values: [1, 2] })), '#/groups'],
  [
    '50,001 values',
    [
      { label: 'a', values: [1] },
      { label: 'b', values: Array(50_000).fill(1) },
    ],
    '#/groups',
  ],
])('%s is refused where it stands', async (_, list, pointer) => {
  const { status, body } = await calculate('groups', { groups: list })
  expect(status).toBe(422)
  expect(body.errors[0].pointer).toBe(pointer)
})

test('a reference that is not among the groups is refused', async () => {
  const { status, body } = await calculate('groups', { groups, reference: 'half a cup' })
  expect([status, body.errors[0].pointer]).toEqual([422, '#/reference'])
})

test('as many groups and values as are taken are answered', async () => {
  const many = Array.from({ length: 64 }, (_, i) => ({
    label: `group ${i}`,
    values: Array.from({ length: 781 }, (_, j) => ((j * 7919 + i * 104_729) % 1000) / 1000),
  }))
  const found = await asked({ groups: many, reference: 'group 9' })
  expect(found.tukey).toHaveLength(2016)
  expect(found.gamesHowell.every(({ p }: Found) => p >= 0 && p <= 1)).toBe(true)
  expect(found.dunnett).toHaveLength(63)
  expect(found.shapiroWilk.unavailable).toContain('5000')
})
