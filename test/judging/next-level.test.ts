import { expect, test } from 'vitest'
import { nextLevel } from '#api/judging/next-level.ts'
import { judgeWithinLimit } from '#api/judging/within-limit.ts'
import { judgedRecord } from '#test/support/a-record.ts'
import { aCondition, askedOf } from '#test/support/asked-of.ts'
import { numberIn, storyRows } from '#test/support/story-rows.ts'

const bases = ['superwash wool', 'wool/nylon 80/20', 'silk']
const acids = [0, 15, 30, 60, 120]

/** Jars of one base, five acids, three sessions, as the invented table has them. */
const jarsOf = (base: string, blank?: string) => {
  const rows = storyRows('acid-by-base.csv').filter((row) => row.base === base)
  const named = rows.map((row) => ({ row, code: `${row.vinegar_ml_per_100g} in ${row.run}` }))
  return judgedRecord({
    pattern: 'P2',
    factors: [{ key: 'acid', stage: 'dye', levels: acids, unit: 'mL per 100 g' }],
    sessions: ['1', '2', '3'],
    vessels: named.map(({ row, code }) => ({
      label: code,
      stage: 'dye',
      session: row.run ?? '',
      kind: 'jar',
    })),
    skeins: named.map(({ row, code }) => ({
      code,
      in: [code],
      level: { acid: Number(row.vinegar_ml_per_100g) },
      results: [
        { kind: 'dye left', value: numberIn(row, 'pct_dye_left') ?? 0 },
        ...(code === blank ? [] : [{ kind: 'lightness', value: numberIn(row, 'L') ?? 0 }]),
      ],
    })),
  })
}
const lighter = aCondition({
  question: 'within-limit',
  outcome: 'lightness',
  against: 'next level',
  margin: 1,
})
const left = aCondition({ question: 'within-limit', outcome: 'dye left', atMost: 6 })

/** The least level at which both conditions hold, stepping down from the top. */
const leastOf = (base: string) => {
  const trial = jarsOf(base)
  const answers = [lighter, left].map((condition) => judgeWithinLimit(askedOf(trial, condition)))
  let least: number | undefined
  for (const [place, acid] of [...acids.entries()].reverse()) {
    if (answers.some((each) => each[place]?.answer !== 'holds')) break
    least = acid
  }
  return least
}

// What the invented story was made to show: 30 mL on both wools, on silk not reached; limits of 30 − 60 mL 1.9 and 1.5.
test.each([
  ['superwash wool', 1.9],
  ['wool/nylon 80/20', 1.5],
])(
  'on %s 30 mL is the least that is enough, and lightness within 1.0 is not shown: up to %d',
  (base, upper) => {
    expect(leastOf(base)).toBe(30)
    const answer = judgeWithinLimit(askedOf(jarsOf(base), lighter))[2]
    expect(answer).toMatchObject({ answer: 'holds', n: 3 })
    expect(answer?.estimate?.upper).toBeCloseTo(upper, 1)
    expect(answer?.cautions).toEqual([
      `Lightness within 1.0 not shown: the difference may be as much as ${upper.toFixed(1)} (95\u00a0%).`,
    ])
  },
)

test('on silk not even the most that was tried is enough', () => {
  expect(leastOf('silk')).toBeUndefined()
  const top = judgeWithinLimit(askedOf(jarsOf('silk'), left)).at(-1)
  expect(top).toMatchObject({
    answer: 'does-not-hold',
    limit: { worst: 12.5, worstText: '12.5\u00a0%', worstAt: 'session 1' },
  })
})

test('nothing stands above the top level, so there it holds', () => {
  for (const base of bases) {
    expect(judgeWithinLimit(askedOf(jarsOf(base), lighter)).at(-1)).toMatchObject({
      answer: 'holds',
      cautions: [],
    })
  }
})

test('a level that was not read in every session does not hold', () => {
  const answer = judgeWithinLimit(askedOf(jarsOf('superwash wool', '30 in 2'), lighter))[2]
  expect(answer).toMatchObject({
    answer: 'not-settled',
    n: 2,
    reason: 'L*: not recorded in every session, here or at 60 mL per 100 g.',
  })
})

const levelled = (values: readonly number[]) => new Map(values.map((value, place) => [String(place), value]))
test.each([
  ['just under', 0.99, 'holds'],
  ['at', 1, 'holds'],
  ['just over', 1.01, 'does-not-hold'],
  ['below the next level by more', -1.01, 'does-not-hold'],
])('a difference %s the margin is judged by its mean', (_where, difference, answer) => {
  const next = [34, 35, 36]
  const here = next.map((value, place) => value + difference + (place - 1) * 0.3)
  expect(nextLevel(levelled(here), levelled(next), { margin: 1, confidence: 0.95 }).answer).toBe(answer)
})

test('two sessions are too few, and three with one difference are said to show no spread', () => {
  const judged = (n: number) =>
    nextLevel(levelled([35, 36, 37].slice(0, n)), levelled([34.5, 35.5, 36.5].slice(0, n)), {
      margin: 1,
      confidence: 0.95,
    })
  expect(judged(2).answer).toBe('not-settled')
  expect(judged(3)).toMatchObject({ answer: 'holds', why: 'no spread', upper: undefined })
})

// R 4.2.2, t.test(c(36, 35.7, 34.6), c(34.7, 35, 34.9), paired = TRUE, conf.level = 0.9): by hand 1.7 ÷ 3 and t(0.95; 2) = 2.919986
test('the limits of the difference are Student’s, of differences within sessions', () => {
  const found = nextLevel(levelled([36, 35.7, 34.6]), levelled([34.7, 35, 34.9]), {
    margin: 1,
    confidence: 0.95,
  })
  const sd = Math.sqrt(((1.3 - 17 / 30) ** 2 + (0.7 - 17 / 30) ** 2 + (-0.3 - 17 / 30) ** 2) / 2)
  expect(found.difference).toBeCloseTo(17 / 30, 10)
  expect(found.upper).toBeCloseTo(17 / 30 + (2.919986 * sd) / Math.sqrt(3), 5)
  expect(found.lower).toBeCloseTo(17 / 30 - (2.919986 * sd) / Math.sqrt(3), 5)
})
