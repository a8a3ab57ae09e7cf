import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { againstReference } from '#api/judging/against-reference.ts'
import type { Answer } from '#api/judging/answer.ts'
import type { ComparedRow } from '#api/judging/compared-row.ts'
import type { Condition } from '#api/judging/condition.ts'
import { type JudgedTrial, judgedTrial } from '#api/judging/judged-trial.ts'
import { judgeNoWorse } from '#api/judging/no-worse.ts'
import { noWorse } from '#api/judging/no-worse-verdict.ts'
import { noiseOf } from '#api/judging/noise.ts'
import { noiseStops } from '#api/judging/noise-gates.ts'
import { judgedRecord, type SkeinWritten } from '#test/support/a-record.ts'
import { aCondition, askedOf } from '#test/support/asked-of.ts'
import { expectClose } from '#test/support/close-to.ts'
import { enteredTwin, steamLadderTrial } from '#test/support/steam-ladder-record.ts'

const loss = aCondition({
  question: 'no-worse',
  outcome: 'dE00',
  wear: { W2: 3 },
  against: 'reference',
  margin: 1,
})
const read = (file: string) =>
  JSON.parse(readFileSync(new URL(`../reference/stats/${file}`, import.meta.url), 'utf8'))

function answersOf(
  trial: JudgedTrial,
  condition: Condition = loss,
  parts: Parameters<typeof askedOf>[2] = {},
) {
  const answers = judgeNoWorse(
    askedOf(trial, condition, { noise: noiseOf(trial, condition), planned: 4, ...parts }),
  )
  return (level: string | number): Answer => {
    const found = answers.find((it) => it.levelId?.endsWith(` ${level}`))
    if (!found) throw new Error(`No answer on ${level}.`)
    return found
  }
}

/** Jars of one level, one a session; undefined is a skein without a result. */
const jars = (
  level: string | number,
  values: readonly (number | undefined)[],
  more: Partial<SkeinWritten> = {},
): SkeinWritten[] =>
  values.map((value, i) => ({
    code: `${level}-${i + 1}`,
    in: [`pot ${level}-${i + 1}`],
    level: { acid: level },
    results: value === undefined ? [] : [{ kind: 'dE00', value, wear: { W2: 3 }, basis: 'own' }],
    ...more,
  }))

function trialOf(
  skeins: readonly SkeinWritten[],
  {
    levels,
    reference,
    ordered,
    twins = [0.1, 0.1, 0.12, 0.09],
    shared = [],
  }: {
    levels: readonly (string | number)[]
    reference: string | number
    ordered?: boolean
    twins?: readonly number[]
    shared?: readonly string[]
  },
): JudgedTrial {
  const pots = [...new Set(skeins.flatMap((it) => it.in ?? []))]
  const { record } = judgedRecord({
    factors: [
      {
        key: 'acid',
        stage: 'dye',
        levels,
        reference,
        ...(ordered === undefined ? {} : { ordered }),
        unit: 'mL',
      },
    ],
    sessions: ['1', '2', '3', '4', '5', '6'],
    vessels: [
      ...pots
        .filter((label) => !shared.includes(label))
        .map((label) => ({
          label,
          stage: 'dye' as const,
          kind: 'pot' as const,
          session: label.split('-').at(-1) ?? '1',
        })),
      ...shared.map((label) => ({ label, stage: 'wash' as const, kind: 'jar' as const })),
    ],
    skeins: [...skeins, { code: 'twin', role: 'twin' }],
  })
  return judgedTrial({ ...record, twins: twins.map((dE00, place) => enteredTwin(dE00, place)) })
}

// Domain notes, section 7, and the worked check of the measuring error: r 0.308 on 6.86 degrees of freedom.
test.each([
  { level: 50, lower: -0.8, upper: 0.84, answer: 'holds' },
  { level: 35, lower: -0.5, upper: 0.55, answer: 'holds' },
  { level: 20, lower: 0.73, upper: 1.97, answer: 'not-settled' },
  { level: 10, lower: undefined, upper: undefined, answer: 'does-not-hold' },
])(
  'the steam ladder: $level minutes is judged by the deciding interval',
  ({ level, lower, upper, answer }) => {
    const found = answersOf(steamLadderTrial())(level)
    expect(found.answer).toBe(answer)
    expect(found.n).toBe(4)
    expect(found.estimate?.confidence).toBeCloseTo(0.9, 12)
    if (lower !== undefined) expect(found.estimate?.lower).toBeCloseTo(lower, 2)
    if (upper !== undefined) expect(found.estimate?.upper).toBeCloseTo(upper, 2)
  },
)

test('raw and net limits stand beside the deciding ones, for the table', () => {
  const { table, figures } = answersOf(steamLadderTrial())(35)
  expect(table?.lower).toBeCloseTo(-0.47, 2)
  expect(table?.upper).toBeCloseTo(0.5, 2)
  expect(figures.netLower).toBeCloseTo(-0.5, 2)
  expect(table?.netUpper).toBeCloseTo(0.53, 2)
  expect(table?.extra).toBeCloseTo(0.02, 2)
  expect(table?.df).toBe(3)
})

test('what the reference lost itself is told, net of the measuring error and as it was read', () => {
  const { figures } = answersOf(steamLadderTrial())(35)
  expect(figures.referenceRawMean).toBeCloseTo(1.01, 2)
  // √(1.22² − 0.308²) of the worst run
  expect(figures.referenceWorst).toBeCloseTo(1.18, 2)
  expect(figures.referenceMean).toBeLessThan(1.01)
})

test('the reason says the limit that decided, in plain words', () => {
  const at = answersOf(steamLadderTrial())
  expect(at(35).reason).toBe(
    'At 35 minutes it changed at most 0.55 more than at 75 minutes; you allowed 1.0.',
  )
  expect(at(20).reason).toBe(
    'At 20 minutes it may have changed from 0.73 more to 1.97 more than at 75 minutes; you allowed 1.0.',
  )
  expect(at(10).reason).toMatch(
    /^At 10 minutes it changed at least 3\.\d\d more than at 75 minutes; you allowed 1\.0\.$/,
  )
})

test('two of four runs do not settle 20 minutes, whatever they look like', () => {
  const found = answersOf(steamLadderTrial({ runs: ['run 1', 'run 2'] }))(35)
  expect(found.answer).toBe('not-settled')
  expect(found.reason).toBe('2 sessions have both 35 minutes and 75 minutes; it takes 3.')
})

const interval = (lower: number, upper: number, n = 4) => ({
  raw: { n, mean: 1, extra: 0, se: 1, df: n - 1, sd: 1, lower, upper, noSpread: false },
  net: undefined,
  netOfUpper: undefined,
  interval: { lower, upper },
})
const known = { margin: 1, fewestUnits: 4, blank: 0, noiseStops: false }

test.each([
  [0, 0.9999, 'holds'],
  [0, 1, 'not-settled'],
  [0, 1.0001, 'not-settled'],
  [0.9999, 3, 'not-settled'],
  [1, 3, 'not-settled'],
  [1.0001, 3, 'does-not-hold'],
])('limits %f to %f against a margin of 1: %s', (lower, upper, answer) => {
  expect(noWorse({ compared: interval(lower, upper), ...known }).answer).toBe(answer)
})

test.each([
  ['two blocks never hold', { compared: interval(0, 0.5, 2) }, 'few blocks'],
  ['three do', { compared: interval(0, 0.5, 3) }, 'under the margin'],
  ['one unit is never a claim', { compared: interval(2, 3), fewestUnits: 1 }, 'one unit'],
  ['two units may be', { compared: interval(2, 3), fewestUnits: 2 }, 'over the margin'],
  ['a blank never holds', { compared: interval(0, 0.5), blank: 1 }, 'blank'],
  ['a blank does not hide what is worse', { compared: interval(2, 3), blank: 1 }, 'over the margin'],
  ['the measuring error stops a holds', { compared: interval(0, 0.5), noiseStops: true }, 'noise'],
  ['it does not stop what is worse', { compared: interval(2, 3), noiseStops: true }, 'over the margin'],
] as const)('%s', (_, parts, because) => {
  expect(noWorse({ ...known, ...parts }).because).toBe(because)
})

test.each([
  [{ kind: 'twins', floor: 0.333, df: 3 }, undefined],
  [{ kind: 'twins', floor: 0.334, df: 5.99 }, 'not known well enough'],
  [{ kind: 'twins', floor: 0.334, df: 6 }, undefined],
  [{ kind: 'instrument', floor: 0.334, df: undefined }, 'not known well enough'],
  [{ kind: 'instrument', floor: 0.333, df: undefined }, undefined],
  [{ kind: 'twins', floor: 0.5, df: 36 }, undefined],
  [{ kind: 'twins', floor: 0.501, df: 36 }, 'more than half of what you allowed'],
  [{ kind: 'planning', floor: 0.01, df: undefined }, 'only assumed'],
  [undefined, 'not known'],
] as const)('a measuring error of %o against a margin of 1: %s', (noise, says) => {
  if (says === undefined) expect(noiseStops(noise, 1)).toBeUndefined()
  else expect(noiseStops(noise, 1)).toContain(says)
})

test('a trial whose error is only assumed never holds, and is told to read a twin again', () => {
  const found = answersOf(steamLadderTrial({ twins: [] }), loss, {
    noise: {
      kind: 'planning',
      rms: 0.1,
      upperRms: 0.17,
      df: undefined,
      floor: 0.09,
      from: 'a planning value',
      n: 0,
    },
  })(35)
  expect(found).toMatchObject({
    answer: 'not-settled',
    reason: 'The measuring error is only assumed: read a twin again on another day.',
    more: null,
  })
})

test('a skein lost after its reading keeps it, one lost before lowers n, and a blank one stops a holds', () => {
  const values = [1, 1.1, 0.9, 1.05]
  const levels = { levels: [30, 60], reference: 60 }
  const last = (skein: Partial<SkeinWritten>) => [
    ...jars(60, values),
    ...jars(30, [1.05, 1.2, 0.85]),
    { ...jars(30, [1.1, 1.1, 1.1, 1.1])[3], ...skein },
  ]
  const of = (skeins: readonly SkeinWritten[]) => answersOf(trialOf(skeins, levels))(30)
  const fourth = jars(30, [1, 1, 1, 1.02]).at(3)
  if (!fourth) throw new Error('There are four.')
  const base = [...jars(60, values), ...jars(30, [1.05, 1.2, 0.85])]
  expect(of([...base, { ...fourth, lost: 'eaten by moths' }])).toMatchObject({ n: 4, answer: 'holds' })
  expect(of([...base, { ...fourth, results: [], lost: 'boiled dry' }])).toMatchObject({
    n: 3,
    answer: 'holds',
  })
  expect(of([...base, { ...fourth, results: [] }])).toMatchObject({
    n: 3,
    answer: 'not-settled',
    reason: '1 skein of 30 mL or 60 mL has no result: read it, or enter why it was lost.',
  })
  expect(last({})).toHaveLength(8)
})

test('values without any spread are not settled', () => {
  const found = answersOf(
    trialOf([...jars(60, [1, 1, 1]), ...jars(30, [1.2, 1.2, 1.2])], { levels: [30, 60], reference: 60 }),
  )(30)
  expect(found.answer).toBe('not-settled')
  expect(found.reason).toContain('copied or rounded')
})

test('packets of one level that were washed in one jar count once, and their sessions as one', () => {
  const skeins = [
    ...jars(60, [1, 1.1, 0.9, 1.05]),
    ...jars(30, [1.05, 1.2, 0.85, 1.0]).map((it) => ({ ...it, in: [...(it.in ?? []), 'jar of 30'] })),
  ]
  const found = answersOf(trialOf(skeins, { levels: [30, 60], reference: 60, shared: ['jar of 30'] }))(30)
  expect(found).toMatchObject({
    n: 1,
    answer: 'not-settled',
    cautions: [expect.stringContaining('count as one')],
  })
})

test('there is no answer without a reference, or without a margin', () => {
  const trial = steamLadderTrial()
  expect(judgeNoWorse(askedOf(trial, loss, { reference: undefined }))).toMatchObject([
    { levelId: null, answer: 'not-settled' },
  ])
  expect(judgeNoWorse(askedOf(trial, { ...loss, margin: 0 }))).toMatchObject([
    { levelId: null, answer: 'not-settled' },
  ])
})

// R: t.test, and lm(y ~ dose + block), in tost-noninferiority-med.json
test('levels in blocks, paired and by the model, have the limits that R gives', () => {
  const { data, expected } = read('tost-noninferiority-med.json')
  const rows = (data.minimumDoseBlocked.rows as { dose: number; block: string; y: number }[]).map(
    ({ dose, block, y }): ComparedRow => ({
      level: String(dose),
      block,
      unit: `${dose} ${block}`,
      vessel: `${dose} ${block}`,
      value: y,
    }),
  )
  for (const method of ['paired', 'model'] as const) {
    const found = againstReference(rows, { reference: '30', method, ordered: true, confidence: 0.95 })
    for (const step of expected.minimumDoseBlocked.steps) {
      const known = method === 'paired' ? step.paired : step.blockModel
      const it = found.at(String(step.dose))
      expectClose(it.extra, step.difference, 1e-8)
      expectClose(it.se, known.se, 1e-6)
      expectClose(it.df, known.df, 1e-5)
      expectClose(it.upper, known.upper95OneSided, 1e-5)
    }
  }
})

test('levels without blocks have the limits that R gives', () => {
  const { data, expected } = read('tost-noninferiority-med.json')
  const rows = (data.minimumDose.rows as { dose: number; y: number }[]).map(
    ({ dose, y }, i): ComparedRow => ({
      level: String(dose),
      block: 'all',
      unit: String(i),
      vessel: String(i),
      value: y,
    }),
  )
  const found = againstReference(rows, { reference: '30', method: 'pooled', ordered: true, confidence: 0.95 })
  for (const step of expected.minimumDose.steps) {
    const it = found.at(String(step.dose))
    expectClose(it.extra, step.difference, 1e-8)
    expectClose(it.se, step.se, 1e-8)
    expectClose(it.upper, step.upper95OneSided, 1e-8)
  }
})

type Arm = { arm: string; block?: string; y: number }
const armRows = (rows: readonly Arm[]): ComparedRow[] =>
  rows.map(({ arm, block = 'all', y }, i) => ({
    level: arm,
    block,
    unit: String(i),
    vessel: String(i),
    value: y,
  }))

// R: multcomp, Dunnett's contrasts with block as a fixed effect
test.each(['paired', 'model'] as const)(
  'arms in complete blocks have Dunnett’s one-sided limits together (%s)',
  (method) => {
    const { data, expected } = read('dunnett-blocked.json')
    const found = againstReference(armRows(data.complete), {
      reference: 'now',
      method,
      ordered: false,
      confidence: 0.95,
    })
    expect(found.family).toBe('dunnett')
    const { less, greater } = expected.complete.fixedBlock
    for (const it of less.comparisons) expectClose(found.at(it.arm).upper, it.limit, 1e-6)
    for (const it of greater.comparisons) expectClose(found.at(it.arm).lower, it.limit, 1e-6)
  },
)

test('where larger is better the limits change sides', () => {
  const { data, expected } = read('dunnett-blocked.json')
  const found = againstReference(armRows(data.complete), {
    reference: 'now',
    method: 'paired',
    ordered: false,
    confidence: 0.95,
    sign: -1,
  })
  for (const it of expected.complete.fixedBlock.greater.comparisons)
    expectClose(found.at(it.arm).upper, -it.limit, 1e-6)
})

test.each(['dunnett-unequal.json', 'dunnett-published-recovery.json'])(
  'arms without blocks have Dunnett’s limits of %s',
  (file) => {
    const { data, expected } = read(file)
    const found = againstReference(armRows(data.rows), {
      reference: data.control,
      method: 'pooled',
      ordered: false,
      confidence: 0.95,
    })
    for (const it of expected.alpha05.less.comparisons) expectClose(found.at(it.arm).upper, it.limit, 1e-6)
  },
)

test('arms whose blocks were joined each have Bonferroni’s limits', () => {
  const value = [
    [1.0, 1.4, 1.2],
    [1.1, 1.2, 1.0],
    [0.9, 1.3, 1.4],
    [1.0, 1.5, 1.1],
  ]
  const rows = value.flatMap((row, i) =>
    row.map(
      (y, k): ComparedRow => ({
        level: ['now', 'A', 'B'][k] ?? '',
        block: `day ${i}`,
        // Two days of A were washed in one jar.
        unit: k === 1 && i < 2 ? 'jar' : `${k} ${i}`,
        vessel: `${k} ${i}`,
        value: y,
      }),
    ),
  )
  const found = againstReference(rows, {
    reference: 'now',
    method: 'model',
    ordered: false,
    confidence: 0.95,
  })
  expect(found).toMatchObject({
    family: 'bonferroni',
    method: 'paired',
    joined: true,
    confidenceOfEach: 0.975,
  })
  // By hand: A in three blocks 0.25, 0.4, 0.5; mean 0.38333, SD 0.12583; t(0.975; 2) = 4.30265 (any table of t)
  expectClose(found.at('A').upper, 0.383333 + 4.30265 * (0.125831 / Math.sqrt(3)), 1e-5)
  // B keeps four: 0.2, −0.1, 0.5, 0.1; mean 0.175, SD 0.25; t(0.975; 3) = 3.18245
  expectClose(found.at('B').upper, 0.175 + 3.18245 * (0.25 / 2), 1e-5)
})

test('arms are named by the person’s own words, each with its own answer', () => {
  const trial = trialOf(
    [
      ...jars('Vinegar, white', [1, 1.1, 0.9, 1.05]),
      ...jars('Citric', [1.1, 1.15, 1.05, 1.2]),
      ...jars('None', [4, 5, 4.5, 4.2]),
    ],
    {
      levels: ['None', 'Citric', 'Vinegar, white'],
      reference: 'Vinegar, white',
      ordered: false,
    },
  )
  const at = answersOf(trial)
  expect(at('Citric').answer).toBe('holds')
  expect(at('Citric').reason).toMatch(
    /^Citric changed at most 0\.\d\d more than Vinegar, white; you allowed 1\.0\.$/,
  )
  expect(at('None').answer).toBe('does-not-hold')
  expect(at('None').method.join(' ')).toContain('Dunnett')
})
