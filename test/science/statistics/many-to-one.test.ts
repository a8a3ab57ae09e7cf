import { expect, test } from 'vitest'
import { type ArmRow, type ManyToOne, manyToOne } from '#api/science/statistics/many-to-one.ts'
import { sharedLoadings } from '#api/science/statistics/shared-loadings.ts'
import { studentTQuantile } from '#api/science/statistics/student-t.ts'
import { isUnavailable } from '#api/science/statistics/unavailable.ts'
import blocked from '#test/reference/stats/dunnett-blocked.json' with { type: 'json' }
import recovery from '#test/reference/stats/dunnett-published-recovery.json' with { type: 'json' }
import unequal from '#test/reference/stats/dunnett-unequal.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

type Comparison = { arm: string; p: number; limit: number }
type Expected = {
  df: number
  twoSided: {
    critical: number
    comparisons: { arm: string; difference: number; se: number; lower: number; upper: number; p: number }[]
  }
  greater: { critical: number; comparisons: Comparison[] }
  less: { critical: number; comparisons: Comparison[] }
}

const rowsOf = (rows: readonly { arm: string; block?: string; y: number }[]): ArmRow[] =>
  rows.map(({ y, ...row }) => ({ ...row, value: y }))

function found(rows: readonly ArmRow[], control: string, confidence = 0.95): ManyToOne {
  const answer = manyToOne(rows, { control, confidence })
  if (isUnavailable(answer)) throw new Error(answer.unavailable)
  return answer
}

// R multcomp 1.4.22, critical values and p by quadrature, checked with mvtnorm (TVPACK): test/reference/stats
const cases: [string, ManyToOne, Expected, { p: number; critical: number }][] = [
  [
    'unequal sizes, one-way',
    found(rowsOf(unequal.data.rows), unequal.data.control),
    unequal.expected.alpha05,
    { p: 1e-8, critical: 1e-8 },
  ],
  [
    'the published recovery times',
    found(rowsOf(recovery.data.rows), recovery.data.control),
    recovery.expected.alpha05,
    { p: 1e-8, critical: 1e-8 },
  ],
  [
    'complete blocks',
    found(rowsOf(blocked.data.complete), blocked.data.control),
    blocked.expected.complete.fixedBlock,
    { p: 1e-8, critical: 1e-8 },
  ],
  // These were had by quasi-Monte-Carlo.
  [
    'blocks with two cells missing',
    found(rowsOf(blocked.data.twoMissing), blocked.data.control),
    blocked.expected.twoMissing.fixedBlock,
    { p: blocked.tolerance.missingCellsAbsoluteP, critical: blocked.tolerance.missingCellsCritical },
  ],
]

test.each(cases)('%s: every arm against the control as in R', (_, answer, expected, within) => {
  expect(answer.adjusted).toBe('dunnett')
  expect(answer.df).toBe(expected.df)
  expect(answer.without).toEqual([])
  expect(Math.abs(answer.critical.twoSided - expected.twoSided.critical)).toBeLessThan(within.critical)
  expect(Math.abs(answer.critical.oneSided - expected.greater.critical)).toBeLessThan(within.critical)
  expect(answer.comparisons.map(({ arm }) => arm)).toEqual(
    expected.twoSided.comparisons.map(({ arm }) => arm),
  )
  for (const [i, mine] of answer.comparisons.entries()) {
    const two = expected.twoSided.comparisons[i]!
    expectClose(mine.difference, two.difference, 1e-10)
    expectClose(mine.se, two.se, 1e-10)
    for (const [value, known] of [
      [mine.lower, two.lower],
      [mine.upper, two.upper],
      [mine.oneSided.lower, expected.greater.comparisons[i]!.limit],
      [mine.oneSided.upper, expected.less.comparisons[i]!.limit],
    ] as const)
      expect(Math.abs(value - known)).toBeLessThan(within.critical * two.se)
    for (const [value, known] of [
      [mine.p, two.p],
      [mine.pAbove, expected.greater.comparisons[i]!.p],
      [mine.pBelow, expected.less.comparisons[i]!.p],
    ] as const)
      expect(Math.abs(value - known)).toBeLessThan(within.p)
  }
})

test('one arm alone is a paired t over the blocks', () => {
  const alone = rowsOf(blocked.data.complete).filter(({ arm }) => arm === 'A' || arm === 'now')
  const answer = found(alone, 'now')
  const pair = blocked.expected.complete.separatePairedT.comparisons[0]!
  expect(answer.adjusted).toBe('none')
  expect(answer.df).toBe(pair.df)
  const [a] = answer.comparisons
  expectClose(a?.difference, pair.difference, 1e-10)
  expectClose(a?.se, pair.se, 1e-10)
  expectClose(a?.lower, pair.lower95, 1e-9)
  expectClose(a?.upper, pair.upper95, 1e-9)
  expectClose(a?.oneSided.lower, pair.lower95OneSided, 1e-9)
  expectClose(a?.p, pair.p, 1e-9)
  expectClose(a?.pAbove, pair.pGreater, 1e-9)
})

test('four arms with cells missing are past Dunnett’s correlations: Bonferroni over the four', () => {
  const levels = ['now', 'A', 'B', 'C', 'D']
  const missing = new Set(['1A', '2B', '2C', '3D', '4A'])
  const rows = [1, 2, 3, 4, 5, 6].flatMap((block) =>
    levels.flatMap((arm, i) =>
      missing.has(`${block}${arm}`)
        ? []
        : [{ arm, block: String(block), value: block + i + ((block * 7 + i * 5) % 4) / 10 }],
    ),
  )
  const answer = found(rows, 'now')
  expect(answer.adjusted).toBe('bonferroni')
  expect(answer.df).toBe(25 - 1 - 5 - 4)
  expectClose(answer.critical.oneSided, studentTQuantile(1 - 0.05 / 4, 15), 1e-12)
  expectClose(answer.critical.twoSided, studentTQuantile(1 - 0.025 / 4, 15), 1e-12)
  const [a] = answer.comparisons
  expectClose(a?.oneSided.upper, a!.difference + answer.critical.oneSided * a!.se, 1e-12)
})

test('an arm that never met the control, and meets no other that did, is left out by name', () => {
  const rows = [
    ...[1, 2, 3].flatMap((block) => [
      { arm: 'now', block: String(block), value: block + 0.1 * (block % 2) },
      { arm: 'A', block: String(block), value: block + 1 },
    ]),
    { arm: 'Z', block: '9', value: 4 },
  ]
  const answer = found(rows, 'now')
  expect(answer.comparisons.map(({ arm }) => arm)).toEqual(['A'])
  expect(answer.without).toEqual(['Z'])
})

test.each([
  ['no control', [{ arm: 'A', value: 1 }], 'No row has the control.'],
  ['the control alone', [{ arm: 'now', value: 1 }], 'There is no arm beside the control.'],
  [
    'one row each',
    [
      { arm: 'now', value: 1 },
      { arm: 'A', value: 2 },
    ],
    'No rows are left over to judge the spread by.',
  ],
  [
    'the same difference in every block',
    [1, 2, 3].flatMap((block) => [
      { arm: 'now', block: String(block), value: block * 1.1 },
      { arm: 'A', block: String(block), value: block * 1.1 + 0.3 },
    ]),
    'There is no spread at all: were values copied or rounded?',
  ],
  [
    'a block for each arm',
    ['now', 'A'].flatMap((arm, i) => [1, 2].map((value) => ({ arm, block: arm, value: value + i }))),
    'No arm was seen in one block with the control.',
  ],
])('%s: no answer, and why', (_, rows, unavailable) => {
  expect(manyToOne(rows, { control: 'now', confidence: 0.95 })).toEqual({ unavailable })
})

test('rows with and without a block are not mixed', () => {
  const rows = [
    { arm: 'now', block: '1', value: 1 },
    { arm: 'A', value: 2 },
  ]
  expect(() => manyToOne(rows, { control: 'now', confidence: 0.95 })).toThrow(RangeError)
})

test('comparisons that share nothing, or against each other, have no loadings', () => {
  const of = (ab: number, ac: number, bc: number) =>
    sharedLoadings([
      [1, ab, ac],
      [ab, 1, bc],
      [ac, bc, 1],
    ])
  expect(of(0, 0.5, 0.5)).toBeUndefined()
  expect(of(-0.2, 0.5, 0.5)).toBeUndefined()
  // λ₁ would be above 1: ρ₁₂ρ₁₃ > ρ₂₃.
  expect(of(0.9, 0.9, 0.5)).toBeUndefined()
  expect(
    sharedLoadings([
      [1, 0.25],
      [0.25, 1],
    ]),
  ).toEqual([0.5, 0.5])
})
