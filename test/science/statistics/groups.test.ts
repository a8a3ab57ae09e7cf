import { expect, test } from 'vitest'
import { compareGroups } from '#api/science/statistics/groups.ts'
import balanced from '#test/reference/stats/oneway-balanced-steam.json' with { type: 'json' }
import unbalanced from '#test/reference/stats/oneway-unbalanced-acid.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// biome-ignore lint/suspicious/noExplicitAny: a test reads whatever comes back
type Found = any

function expectFields(
  found: Found,
  known: Found,
  fields: Readonly<Record<string, string>>,
  relative: number,
) {
  for (const [ours, theirs] of Object.entries(fields)) expectClose(found[ours], known[theirs], relative)
}
const same = (...names: string[]) => Object.fromEntries(names.map((name) => [name, name]))

// R 4.2.2 with car 3.1 and, for Tukey, Games–Howell and Dunnett, quadrature: test/reference/stats/oneway-*.json
for (const { id, data, expected } of [balanced, unbalanced]) {
  const labels = data.groups.map(({ level }) => level)
  const found: Found = compareGroups(
    data.groups.map(({ y }) => y),
    { reference: labels.indexOf(data.control) },
  )

  test(`${id}: each group by itself`, () => {
    for (const [i, known] of expected.descriptives.entries()) {
      const fields = {
        ...same('n', 'mean', 'sd', 'se', 'median', 'min', 'max'),
        lower: 'ciLower',
        upper: 'ciUpper',
      }
      expectFields(found.summaries[i], known, fields, 1e-9)
    }
  })

  test(`${id}: all groups together`, () => {
    const anova = same('F', 'p', 'dfBetween', 'dfWithin', 'ssBetween', 'ssWithin', 'msWithin', 'etaSquared')
    expectFields(found.anova, { ...expected.classic, msWithin: expected.classic.msWithin }, anova, 1e-9)
    expectFields(found.welch, expected.welch, same('F', 'df1', 'df2', 'p'), 1e-9)
    expectFields(found.kruskalWallis, expected.kruskalWallis, same('H', 'df', 'p'), 1e-9)
    expectFields(found.brownForsythe, expected.brownForsythe, same('F', 'df1', 'df2', 'p'), 1e-9)
    expectFields(found.shapiroWilk, expected.shapiroWilkResiduals, same('W'), 1e-10)
    expectFields(found.shapiroWilk, expected.shapiroWilkResiduals, same('p'), 1e-7)
  })

  test.each([
    ['tukey', expected.tukey.pairs],
    ['gamesHowell', expected.gamesHowell.pairs],
    ['dunnett', expected.dunnett.twoSided.comparisons],
  ] as const)(`${id}: pairs by %s`, (method, pairs) => {
    expect(found[method]).toHaveLength(pairs.length)
    for (const known of pairs) {
      const pair = found[method].find(
        ({ a, b }: { a: number; b: number }) => labels[a] === known.a && labels[b] === known.b,
      )
      expectFields(pair, known, same('difference', 'se', 'df', 'lower', 'upper', 'p'), 1e-8)
    }
  })
}

// Montgomery, Design and Analysis of Experiments, example 3.1, etch rate by power (from memory)
test('the etch rates of a textbook', () => {
  const { anova, tukey }: Found = compareGroups([
    [575, 542, 530, 539, 570],
    [565, 593, 590, 579, 610],
    [600, 651, 610, 637, 629],
    [725, 700, 715, 685, 710],
  ])
  expectClose(anova.ssBetween, 66870.55, 1e-9)
  expectClose(anova.ssWithin, 5339.2, 1e-9)
  expect(anova.F).toBeCloseTo(66.8, 1)
  // Its Tukey allowance at 95 % is 33.09, with q rounded to 4.05.
  expect((tukey[0].upper - tukey[0].lower) / 2).toBeCloseTo(33.09, 1)
})

// Dunnett (1955): breaking strength of a cloth after three chemical processes and the usual one, s√(2/3) = 3.56 (from
// memory). The two-sided 5 % point for 3 processes and 8 degrees of freedom is 2.88 in Dunnett (1964), table II (from
// memory).
test('the cloth of Dunnett’s paper', () => {
  const { dunnett }: Found = compareGroups(
    [
      [55, 47, 48],
      [55, 64, 64],
      [55, 49, 52],
      [50, 44, 41],
    ],
    { reference: 0 },
  )
  expect(dunnett.map(({ difference }: Found) => difference)).toEqual([11, 2, -5])
  expect(dunnett[0].df).toBe(8)
  const criticalT = (dunnett[0].upper - dunnett[0].lower) / 2 / dunnett[0].se
  expect(criticalT).toBeCloseTo(2.88, 2)
  expect(dunnett[0].se).toBeCloseTo(3.56, 2)
})

test('one group alone has a summary and a shape, and nothing to be compared with', () => {
  const found: Found = compareGroups([[1, 2, 4, 4.5]])
  expectClose(found.summaries[0].mean, 2.875, 1e-15)
  // R 4.2.2, shapiro.test
  expectClose(found.shapiroWilk.W, 0.915686067343, 1e-9)
  for (const part of ['anova', 'welch', 'kruskalWallis', 'brownForsythe', 'tukey', 'gamesHowell'])
    expect(found[part].unavailable).toContain('One group alone')
})

test('a group of one has no spread of its own but takes part where the spread is common', () => {
  const found: Found = compareGroups([[1, 2, 4], [9], [3, 3.5, 5]])
  expect(found.summaries[1].sd.unavailable).toContain('One value alone')
  expect(found.welch.unavailable).toBeDefined()
  expect(found.gamesHowell[0].unavailable).toBeDefined()
  expect(found.gamesHowell[1].p).toBeGreaterThan(0)
  expect(found.tukey[0].p).toBeGreaterThan(0)
})

// The family stays three groups, so the pair that is left is judged as one of three.
test('the family of Games and Howell stays the number of groups', () => {
  const whole: Found = compareGroups([[1, 2, 4], [9], [3, 3.5, 5]]).gamesHowell
  const pair: Found = compareGroups([
    [1, 2, 4],
    [3, 3.5, 5],
  ]).gamesHowell
  expect(whole[1].df).toBe(pair[0].df)
  expect(whole[1].p).toBeGreaterThan(pair[0].p)
})

test('groups without any spread get a sentence and keep their differences', () => {
  const found: Found = compareGroups([
    [2, 2, 2],
    [5, 5, 5],
  ])
  for (const part of [found.anova, found.welch, found.brownForsythe, found.shapiroWilk, found.tukey[0]])
    expect(part.unavailable).toMatch(/equal|equally/)
  expect(found.tukey[0].difference).toBe(3)
  expect(found.anova.ssBetween).toBe(13.5)
  expect(found.summaries[0].lower.unavailable).toContain('equal')
})

test('all values equal have no ranks either', () => {
  const found: Found = compareGroups([
    [0.1, 0.1],
    [0.1, 0.1, 0.1],
  ])
  expect(found.kruskalWallis.unavailable).toContain('equal')
})

test('groups of two say nothing about a difference in spread', () => {
  const found: Found = compareGroups([
    [0.1, 0.7],
    [0.3, 0.35],
  ])
  expect(found.brownForsythe.unavailable).toContain('one or two')
})

test('values too large to be squared get a sentence, never a number that is none', () => {
  const text = JSON.stringify(
    compareGroups(
      [
        [1e308, -1e308, 3],
        [1e300, 2, 5],
      ],
      { reference: 0 },
    ),
    (_, value) => (typeof value === 'number' && !Number.isFinite(value) ? 'not finite' : value),
  )
  expect(text.match(/"(F|p|H|W|se|sd)":"not finite"/)).toBeNull()
})
