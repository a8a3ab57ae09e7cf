import { expect, test } from 'vitest'
import { judge } from '#api/science/verdicts/judge.ts'
import type { TrialRow, TrialRule, TrialWords } from '#api/science/verdicts/trial-verdict.ts'
import { ladderLimits, steamLadder, twinNoise } from '#test/support/steam-ladder.ts'

const words: TrialWords = {
  level: (level) => `${level} minutes of steam`,
  short: (level) => `${level} minutes`,
  vessel: { one: 'packet', many: 'packets' },
  sides: {
    stain: {
      label: 'staining',
      value: (grade) =>
        Number.isInteger(grade) ? String(grade) : `${Math.floor(grade)}-${Math.ceil(grade)}`,
    },
    rinses: { label: 'rinses' },
    felt: { label: 'felting' },
  },
}
const ladder = steamLadder()
const rule: TrialRule = { margin: 1, plannedSessions: 4, limits: ladderLimits }
const noise = twinNoise

/** Skeins of one level in their own packets, one a day; a value of undefined is not read. */
const steamed = (level: number, ...values: (number | undefined)[]): TrialRow[] =>
  values.map((value, i) => {
    const name = `${level}-${i + 1}`
    return { level, session: `day ${i + 1}`, vessel: name, skein: name, later: [`jar ${name}`], value }
  })
const short = steamed(30, 1, 1.1, 0.9, 1.2)
const full = steamed(60, 1, 1, 1.1, 0.9)
const plain: TrialRule = { margin: 1, plannedSessions: 4 }
const kinds = (verdict: ReturnType<typeof judge>) => verdict.cautions.map((it) => it.kind)

test('the sample ladder: 35 minutes of steam holds, said in the words of the findings page', () => {
  const verdict = judge(ladder, rule, { words, noise })
  expect(verdict).toMatchObject({ verdict: 'holds', least: 35, window: { from: 35, to: 35 }, unit: 'vessel' })
  expect(verdict.sentences).toEqual({
    headline: '35 minutes of steam holds.',
    lead: 'Against 75 minutes its extra loss is between −0.47 and 0.50 ΔE00 (90\u00a0% interval, mean 0.02). The margin is 1.0.',
    countsLine: '8 skeins from 8 packets in 4 sessions, 16 readings of 5 spots. Noise 0.3.',
  })
  expect(kinds(verdict)).toEqual(['stop', 'window'])
  expect(verdict.cautions[0]?.text).toContain(
    'Its extra loss may be as high as 1.90, staining came to 3 and rinses came to 5.',
  )
  expect(verdict.cautions[1]?.text).toContain('The window is 35 minutes and nothing wider.')
  expect(verdict.settle).toBeUndefined()
})

test('two of four runs are not settled, whatever they look like, and what is missing is the rest of the plan', () => {
  const two = ladder.filter((row) => row.session === 'run 1' || row.session === 'run 2')
  const verdict = judge(two, rule, { words, noise })
  expect(verdict).toMatchObject({ verdict: 'not-settled', least: undefined, settle: { sessionsMore: 2 } })
  expect(verdict.sentences.headline).toBe('Not settled: 2 of 4 sessions.')
  expect(verdict.steps.every((step) => step.answer === 'not-settled')).toBe(true)
  expect(kinds(verdict)).toEqual(expect.arrayContaining(['few-sessions', 'plan-not-done']))
  // The loss is worked out all the same, for the picture: domain, section 7 has 1.33 for 20 minutes.
  expect(verdict.steps.find((step) => step.level === 20)?.extra).toBeCloseTo(1.33, 2)
  // Two-sided p = 0.27 there, which must not be read as "the same"
  expect(verdict.cautions.find((it) => it.kind === 'not-as-good')?.text).toContain(
    '20 minutes: 1.33 more than 75 minutes, p = 0.27',
  )
})

test('a plan of two sessions never makes a claim', () => {
  const two = [...steamed(30, 1, 1.1), ...steamed(60, 1.1, 1)]
  const verdict = judge(two, { ...plain, plannedSessions: 2 }, { words, noise })
  expect(verdict).toMatchObject({ verdict: 'not-settled', settle: { sessionsMore: 1 } })
})

test('a second look is judged at 97.5 % and says so', () => {
  const first = judge(ladder, rule, { words, noise })
  const second = judge(ladder, { ...rule, look: 2 }, { words, noise })
  expect(second.confidence).toBeCloseTo(0.975, 12)
  expect(second.steps[0]?.upper).toBeGreaterThan(first.steps[0]?.upper ?? 0)
  // t(3) at 0.975 is 3.182, at 0.95 it is 2.353: any printed table of t
  const [a, b] = [first.steps[0], second.steps[0]]
  expect(((b?.upper ?? 0) - (b?.extra ?? 0)) / ((a?.upper ?? 0) - (a?.extra ?? 0))).toBeCloseTo(
    3.182 / 2.353,
    3,
  )
  expect(second.sentences.lead).toContain('second look')
  expect(kinds(second)).toContain('second-look')
})

test('a level with one jar for all its skeins is one unit, of which nothing is claimed', () => {
  const oneJar = short.map((row) => ({ ...row, later: ['the big jar'] }))
  const verdict = judge([...oneJar, ...full], plain, { words, noise })
  expect(verdict.verdict).toBe('not-settled')
  expect(verdict.counts.find((it) => it.level === 30)).toMatchObject({ units: 1, skeins: 4, vessels: 4 })
  expect(kinds(verdict)).toEqual(expect.arrayContaining(['one-unit', 'shared-later']))
})

test('a jar that all levels shared joins nothing', () => {
  const rows = [...short, ...full].map((row) => ({ ...row, later: ['the big jar'] }))
  const verdict = judge(rows, plain, { words, noise })
  expect(verdict.verdict).toBe('holds')
  expect(verdict.counts.every((it) => it.units === 4)).toBe(true)
})

test('skeins of two days washed in one jar count once', () => {
  const rows = short.map((row, i) => ({ ...row, later: [`jar of days ${i < 2 ? '1 and 2' : '3 and 4'}`] }))
  const verdict = judge([...rows, ...full], plain, { words, noise })
  expect(verdict.steps[0]?.n).toBe(2)
  expect(verdict.verdict).toBe('not-settled')
  const others = judge(
    [...short, ...full, ...steamed(10, 5, 5.2, 5.4, 5.1).map((row) => ({ ...row, later: ['jar of 10'] }))],
    plain,
    { words, noise },
  )
  expect(others.steps[0]).toMatchObject({ level: 30, n: 4, answer: 'holds' })
})

test('a whole session for each level is no comparison at all', () => {
  const rows = [...short.map((row) => ({ ...row, session: `${row.session} am` })), ...full]
  const verdict = judge(rows, plain, { words, noise })
  expect(verdict).toMatchObject({ verdict: 'not-settled', unit: 'session' })
  expect(verdict.settle?.why).toContain('held one level only')
  expect(kinds(verdict)).toContain('session-is-level')
})

test('three skeins of one packet are one unit, and the count says both', () => {
  const rows = [...short, ...full].flatMap((row) =>
    ['a', 'b', 'c'].map((part) => ({
      ...row,
      skein: row.skein + part,
      value: (row.value ?? 0) + (part === 'a' ? 0.1 : 0),
    })),
  )
  const verdict = judge(rows, plain, { words, noise })
  expect(verdict.steps[0]).toMatchObject({ n: 4, df: 3 })
  expect(verdict.counts[0]).toMatchObject({ units: 4, vessels: 4, skeins: 12 })
  expect(verdict.sentences.countsLine).toContain('24 skeins from 8 packets in 4 sessions')
})

test('a level that was always in the blue pot, while others were not, is warned of', () => {
  const rows = [
    ...short.map((row) => ({ ...row, equipment: 'blue pot' })),
    ...full.map((row, i) => ({ ...row, equipment: i % 2 ? 'red pot' : 'blue pot' })),
  ]
  const verdict = judge(rows, plain, { words, noise })
  expect(verdict.cautions.find((it) => it.kind === 'always-same')?.text).toContain(
    '30 minutes always had the same piece of equipment',
  )
})

test('a noise floor over half the margin lets nothing hold, and says how many readings it takes', () => {
  const blind = { ...noise, floor: 0.6, rms: 0.65, readingsNeeded: 12 }
  const verdict = judge([...short, ...full], plain, { words, noise: blind })
  expect(verdict.verdict).toBe('not-settled')
  expect(verdict.settle?.why).toBe(
    'Your way of measuring cannot see this margin: it takes 12 readings of each skein.',
  )
  expect(kinds(verdict)).toContain('noise-hides')
})

test('a noise floor over a third of the margin is warned of', () => {
  const near = judge([...short, ...full], plain, { words, noise: { ...noise, floor: 0.4 } })
  expect(near.verdict).toBe('holds')
  expect(kinds(near)).toContain('near-noise')
  expect(kinds(judge([...short, ...full], plain, { words }))).toContain('noise-unknown')
})

test('a lost skein stays in the count with its reason', () => {
  const lost = short.map((row, i) => (i === 3 ? { ...row, value: undefined, lost: 'boiled dry' } : row))
  const verdict = judge([...lost, ...full], plain, { words, noise })
  expect(verdict.counts.find((it) => it.level === 30)).toMatchObject({
    planned: 4,
    skeins: 3,
    lost: [{ skein: '30-4', reason: 'boiled dry' }],
  })
  expect(verdict.sentences.countsLine).toContain('1 lost.')
  expect(verdict.steps[0]?.n).toBe(3)
  expect(kinds(verdict)).toContain('lost')
  expect(kinds(verdict)).not.toContain('loss-by-level')
})

test('skeins lost at one level only are said to go with the level', () => {
  const lost = short.map((row, i) => (i > 1 ? { ...row, value: undefined, lost: 'felted shut' } : row))
  expect(kinds(judge([...lost, ...full], plain, { words, noise }))).toContain('loss-by-level')
})

test('the value of a lost skein is not used', () => {
  const lost = short.map((row, i) => (i === 3 ? { ...row, value: 50, lost: 'wrong dye' } : row))
  expect(judge([...lost, ...full], plain, { words, noise }).verdict).toBe('holds')
})

test('a session without one of the levels is named', () => {
  const verdict = judge([...short.slice(0, 3), ...full], plain, { words, noise })
  expect(verdict.cautions.find((it) => it.kind === 'level-missing')?.text).toContain(
    'Day 4 has no 30 minutes',
  )
})

test('a blank staining leaves it unsettled and says what to write down', () => {
  const limits = [{ side: 'stain', atLeast: 4 }]
  const rows = [...short, ...full].map((row, i) => ({ ...row, side: { stain: i === 0 ? undefined : 5 } }))
  const verdict = judge(rows, { ...plain, limits }, { words, noise })
  expect(verdict.verdict).toBe('not-settled')
  expect(verdict.settle?.why).toBe('Staining must be recorded in every session.')
  expect(kinds(verdict)).toContain('side-blank')
})

test('a reference that breaks a limit does not hold itself', () => {
  const limits = [{ side: 'stain', atLeast: 4 }]
  const rows = [...short, ...full].map((row) => ({ ...row, side: { stain: row.skein === '60-1' ? 3.5 : 5 } }))
  const verdict = judge(rows, { ...plain, limits }, { words, noise })
  expect(verdict).toMatchObject({ verdict: 'does-not-hold', least: undefined })
  expect(verdict.sentences.headline).toBe('60 minutes of steam does not hold.')
  expect(verdict.cautions.find((it) => it.kind === 'reference-breaks')?.text).toContain('staining was 3-4')
})

test('equal differences are asked about, not believed', () => {
  const verdict = judge([...steamed(30, 1.1, 1.2, 1.3, 1.4), ...steamed(60, 1, 1.1, 1.2, 1.3)], plain, {
    words,
    noise,
  })
  expect(verdict.verdict).toBe('not-settled')
  expect(kinds(verdict)).toContain('no-spread')
})

test('not settled is told apart from as good as', () => {
  const verdict = judge([...steamed(30, 1, 3, 0.5, 2.6), ...full], plain, { words, noise })
  expect(verdict.verdict).toBe('not-settled')
  expect(verdict.sentences.headline).toMatch(/^Not settled/)
  expect(verdict.cautions.find((it) => it.kind === 'not-as-good')?.title).toBe(
    'Not settled is not “as good as”',
  )
})

test('a level that is plainly worse does not hold', () => {
  const verdict = judge([...steamed(30, 4, 4.2, 4.1, 3.9), ...full], plain, { words, noise })
  expect(verdict.sentences.headline).toBe('30 minutes of steam does not hold.')
})

test('spreads that differ by more than 3 are warned of where one spread is taken for all', () => {
  const rows = [...steamed(30, 1, 2.5, 0.2, 1.8), ...steamed(60, 1, 1.05, 1.02, 1)]
  expect(kinds(judge(rows, { ...plain, method: 'model' }, { words, noise }))).toContain('spreads-differ')
  expect(kinds(judge(rows, plain, { words, noise }))).not.toContain('spreads-differ')
})

test('an empty window is in the headline', () => {
  const limits = [{ side: 'felt', atMost: 2, end: 'high' as const }]
  const rows = [...short, ...full].map((row) => ({ ...row, side: { felt: 3 } }))
  const verdict = judge(rows, { ...plain, limits }, { words, noise })
  expect(verdict.sentences.headline).toBe('30 minutes of steam holds, but the window is empty.')
})

test('parts of one skein are compared within the skein', () => {
  const rows = ['A', 'B', 'C', 'D', 'E'].flatMap((parent, i) => [
    {
      level: 'plain water',
      session: 'the day',
      vessel: `bowl ${parent}1`,
      parent,
      skein: `${parent}1`,
      value: 10 + i,
    },
    {
      level: 'hot soap',
      session: 'the day',
      vessel: `bowl ${parent}2`,
      parent,
      skein: `${parent}2`,
      value: 10.1 + i + (i % 2) / 10,
    },
  ])
  const verdict = judge(
    rows,
    { margin: 1, plannedSessions: 5, block: 'parent', order: ['hot soap', 'plain water'] },
    { words: { level: String, block: { one: 'skein', many: 'skeins' } }, noise },
  )
  expect(verdict).toMatchObject({ verdict: 'holds', unit: 'vessel', sessionsIn: 5 })
  expect(verdict.steps[0]).toMatchObject({ n: 5, df: 4 })
})

test('skeins that are not read yet are neither lost nor zero', () => {
  const verdict = judge([...steamed(30, 1, 1.1, 0.9, undefined), ...full], plain, { words, noise })
  expect(verdict.counts.find((it) => it.level === 30)).toMatchObject({
    withoutResult: 1,
    skeins: 3,
    lost: [],
  })
  expect(kinds(verdict)).toContain('no-result')
})

test('nothing read yet is not settled, with the plan ahead', () => {
  const verdict = judge([...steamed(30, undefined), ...steamed(60, undefined)], plain, { words })
  expect(verdict.sentences.headline).toBe('Not settled: 0 of 4 sessions.')
})

test('a level below the least that holds, and not settled, is told apart from one that does not hold', () => {
  const rows = [...steamed(20, 2, 1.2, 2.4, 1.1), ...short, ...full]
  const verdict = judge(rows, plain, { words, noise })
  expect(verdict).toMatchObject({ verdict: 'holds', least: 30 })
  expect(verdict.cautions.find((it) => it.kind === 'open-below')?.title).toBe('20 minutes is not settled')
  expect(kinds(verdict)).not.toContain('stop')
})

test('a session beyond the plan asks for a new edition of the rule', () => {
  const verdict = judge([...short, ...full], { ...plain, plannedSessions: 3 }, { words, noise })
  expect(kinds(verdict)).toContain('beyond-plan')
})
