import { expect, test } from 'vitest'
import { hotelling, hotellingOfTwo, simultaneousReach } from '#api/science/statistics/hotelling.ts'
import { oneSample } from '#api/science/statistics/one-sample.ts'
import reference from '#test/reference/stats/hotelling-lab.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

// biome-ignore lint/suspicious/noExplicitAny: a test reads whatever comes back
type Found = any
const names = ['dL', 'da', 'db'] as const
const columnsOf = (rows: readonly Record<(typeof names)[number], number>[]) =>
  names.map((name) => rows.map((row) => row[name]))
const [a, b] = [columnsOf(reference.data.groupA), columnsOf(reference.data.groupB)]

// From its definition in R 4.2.2, the two-sample F checked by manova: test/reference/stats/hotelling-lab.json
test.each([
  ['group A', a, reference.expected.oneSampleA],
  ['group B', b, reference.expected.oneSampleB],
] as const)('%s against no shift', (_, columns, known) => {
  const found: Found = hotelling(columns)
  expectClose(found.T2, known.T2, 1e-9)
  expectClose(found.F, known.F, 1e-9)
  expect([found.df1, found.df2]).toEqual([known.df1, known.df2])
  expectClose(found.p, known.pValue, 1e-9)
  for (const [i, name] of names.entries()) {
    const of = known.intervals[name]
    const sample: Found = oneSample(columns[i]!, { level: 0.95 })
    expectClose(sample.se, of.se, 1e-9)
    expectClose(sample.lower, of.tLower95, 1e-9)
    expectClose(sample.upper, of.tUpper95, 1e-9)
    const reach = simultaneousReach(known.n, 3, { level: 0.95 }) * sample.se
    expectClose(sample.mean - reach, of.simultaneousLower95, 1e-9)
    expectClose(sample.mean + reach, of.simultaneousUpper95, 1e-9)
  }
})

test('the two groups against one another', () => {
  const known = reference.expected.twoSample
  const found: Found = hotellingOfTwo(a, b)
  expectClose(found.T2, known.T2, 1e-9)
  expectClose(found.F, known.F, 1e-9)
  expect([found.df1, found.df2]).toEqual([known.df1, known.df2])
  expectClose(found.p, known.pValue, 1e-9)
})

// Johnson & Wichern, Applied Multivariate Statistical Analysis, example 5.1: T² = 7/9 for three pairs about (9, 5)
// (from memory)
test('three pairs of a textbook', () => {
  const found: Found = hotelling([
    [6 - 9, 10 - 9, 8 - 9],
    [9 - 5, 6 - 5, 3 - 5],
  ])
  expectClose(found.T2, 7 / 9, 1e-12)
})

test('one direction is a t-test', () => {
  const found: Found = hotelling([[1, 2, 6]])
  const sample: Found = oneSample([1, 2, 6], { level: 0.95 })
  expectClose(found.T2, sample.t ** 2, 1e-12)
  expectClose(found.p, sample.p, 1e-12)
})

test('too few units, no spread in one direction, and differences in a plane have no answer', () => {
  expect(
    hotelling([
      [1, 2, 3],
      [2, 1, 3],
      [0, 1, 5],
    ]),
  ).toHaveProperty('unavailable')
  expect(
    hotelling([
      [1, 1, 1, 1],
      [2, 1, 3, 4],
    ]),
  ).toHaveProperty('unavailable')
  expect(
    hotelling([
      [1, 2, 3, 5],
      [2, 4, 6, 10],
    ]),
  ).toHaveProperty('unavailable')
})
