import { expect, test } from 'vitest'
import { judgeAlike } from '#api/judging/alike.ts'
import type { Condition } from '#api/judging/condition.ts'
import { judgeNoWorse } from '#api/judging/no-worse.ts'
import { pairsVerdict } from '#api/judging/pairs-verdict.ts'
import { judgedRecord, type SkeinWritten } from '#test/support/a-record.ts'
import { aCondition, askedOf } from '#test/support/asked-of.ts'

const staining = aCondition({
  question: 'no-worse',
  outcome: 'staining',
  fibre: 'wool',
  wear: { W2: 3 },
  against: 'reference',
  direction: 'larger is better',
})
const bled = aCondition({ question: 'no-worse', outcome: 'bled', wear: { W5: 1 }, against: 'reference' })

/** Grades of two arms, a pair for each session; several of one arm in a session as a list. */
function graded(
  condition: Condition,
  pairs: readonly (readonly [number | readonly number[] | undefined, number])[],
  { sharedJar = false }: { sharedJar?: boolean } = {},
) {
  const skeins: SkeinWritten[] = pairs.flatMap(([mine, other], i) => [
    ...[mine ?? []].flat().map((value, k) => ({
      code: `C${i}-${k}`,
      in: [`pot C${i}-${k}`, ...(sharedJar ? ['jar'] : [])],
      level: { acid: 'Citric' },
      results: [{ kind: condition.outcome, value, fibre: condition.fibre ?? '', wear: condition.wear }],
    })),
    ...(mine === undefined ? [{ code: `C${i}`, in: [`pot C${i}`], level: { acid: 'Citric' } }] : []),
    {
      code: `V${i}`,
      in: [`pot V${i}`],
      level: { acid: 'Vinegar' },
      results: [
        { kind: condition.outcome, value: other, fibre: condition.fibre ?? '', wear: condition.wear },
      ],
    },
  ])
  const trial = judgedRecord({
    factors: [{ key: 'acid', stage: 'dye', levels: ['Citric', 'Vinegar'], reference: 'Vinegar' }],
    sessions: pairs.map((_, i) => `${i}`),
    vessels: [
      ...skeins.flatMap(({ code, in: [pot = ''] = [] }) => [
        { label: pot, stage: 'dye' as const, session: /\d+/.exec(code)?.[0] ?? '0' },
      ]),
      { label: 'jar', stage: 'wash' as const, kind: 'jar' as const },
    ],
    skeins,
  })
  const judge = condition.question === 'alike' ? judgeAlike : judgeNoWorse
  const [answer] = judge(askedOf(trial, condition))
  if (!answer) throw new Error('Nothing was answered.')
  return answer
}

const same = [4, 4] as const

test('five pairs of which none is worse hold, and up to 45 % may still be', () => {
  const found = graded(staining, [same, same, same, [4.5, 4], same])
  expect(found).toMatchObject({ answer: 'holds', n: 5, more: null, estimate: null })
  // 1 − 0.05^(1/5) = 0.4507 (domain notes, section 4)
  expect(found.figures.failingUpTo).toBeCloseTo(0.4507, 4)
  expect(found.reason).toBe(
    'In none of 5 sessions staining of wool at Citric was worse than at Vinegar; up to 45\u00a0% may still be.',
  )
})

test('four pairs do not settle it: one more is needed', () => {
  expect(graded(staining, [same, same, same, same])).toMatchObject({ answer: 'not-settled', n: 4, more: 1 })
})

test('one pair that is half a grade worse is enough, unless half a grade was allowed', () => {
  const pairs = [same, same, same, same, [3.5, 4]] as const
  const found = graded(staining, pairs)
  expect(found.answer).toBe('does-not-hold')
  expect(found.reason).toContain('In 1 of 5 sessions')
  expect(found.reason).toContain('3-4 against 4')
  expect(graded(staining, pairs).figures.failingUpTo).toBeNull()
  expect(graded({ ...staining, margin: 0.5 }, pairs).answer).toBe('holds')
  expect(graded({ ...staining, margin: 0.5 }, [...pairs.slice(0, 4), [3, 4]]).answer).toBe('does-not-hold')
})

test('several of one arm in a session are their median, of two the worse', () => {
  expect(graded(staining, [same, same, same, same, [[3.5, 4, 4], 4]]).answer).toBe('holds')
  expect(graded(staining, [same, same, same, same, [[3.5, 4], 4]]).answer).toBe('does-not-hold')
})

test('a blank grade does not hold back what is worse, and stops what would hold', () => {
  expect(graded(staining, [same, same, same, same, same, [undefined, 4]])).toMatchObject({
    n: 5,
    answer: 'not-settled',
  })
  expect(graded(staining, [[3, 4], same, same, same, same, [undefined, 4]]).answer).toBe('does-not-hold')
})

test('skeins that shared one wash jar are one unit, of which nothing is claimed', () => {
  expect(graded(staining, [same, same, same, same, same], { sharedJar: true })).toMatchObject({
    n: 1,
    answer: 'not-settled',
  })
})

test('by yes or no: no pair in which the arm bled and the reference did not', () => {
  expect(
    graded(bled, [
      [0, 0],
      [0, 1],
      [1, 1],
      [0, 0],
      [0, 0],
    ]).answer,
  ).toBe('holds')
  const found = graded(bled, [
    [0, 0],
    [0, 1],
    [1, 0],
    [0, 0],
    [0, 0],
  ])
  expect(found.answer).toBe('does-not-hold')
  expect(found.reason).toContain('bled against no bleeding')
})

test('alike by grades: a pair that is better by more than the margin is not alike either', () => {
  const alike = { ...staining, question: 'alike' as const, margin: 0.5 }
  expect(graded(alike, [same, [4.5, 4], [3.5, 4], same, same]).answer).toBe('holds')
  expect(graded(alike, [same, [5, 4], same, same, same]).answer).toBe('does-not-hold')
  expect(graded({ ...alike, margin: 0 }, [same, [4.5, 4], same, same, same]).answer).toBe('does-not-hold')
})

test.each([
  [[0, 0, 0, 0, 0.5], 0.5, 'holds'],
  [[0, 0, 0, 0, 0.5], 0.49, 'does-not-hold'],
  [[0, 0, 0, 0], 0, 'not-settled'],
  [[], 0, 'not-settled'],
] as const)('amounts %j against %f: %s', (amounts, margin, answer) => {
  expect(pairsVerdict(amounts, { margin, fewestUnits: 5, blank: 0 }).answer).toBe(answer)
})
