import { expect, test } from 'vitest'
import { judgeAlike } from '#api/judging/alike.ts'
import { coloursCompared } from '#api/judging/alike-colours.ts'
import { alike } from '#api/judging/alike-verdict.ts'
import { coloursApart } from '#api/judging/colours-between-arms.ts'
import { deciding } from '#api/judging/deciding-interval.ts'
import { judgedTrial } from '#api/judging/judged-trial.ts'
import { type Noise, noiseOf } from '#api/judging/noise.ts'
import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import { extraLoss } from '#api/science/verdicts/extra-loss.ts'
import { pairedExtraLoss } from '#api/science/verdicts/paired-extra-loss.ts'
import tost from '#test/reference/stats/equivalence-tost.json' with { type: 'json' }
import med from '#test/reference/stats/tost-noninferiority-med.json' with { type: 'json' }
import { recordOf } from '#test/support/a-record.ts'
import { aCondition, askedOf } from '#test/support/asked-of.ts'
import { expectClose } from '#test/support/close-to.ts'
import { steamLadderTrial } from '#test/support/steam-ladder-record.ts'

const known = { fewestUnits: 7, blank: 0, noiseStops: false }
const blocksOf = (values: readonly number[]) => ({
  vessels: [],
  units: values,
  blocks: new Map(values.map((value, i) => [String(i), value])),
})

// R: t.test(b, a, paired = TRUE, conf.level = 0.9)
test.each(['pairedNarrow', 'pairedWide'] as const)(
  'two one-sided tests within pairs answer as R does: %s',
  (name) => {
    const expected = tost.expected[name]
    const raw = pairedExtraLoss(blocksOf(tost.data.b), blocksOf(tost.data.a), { confidence: 0.95 })
    expectClose(raw.lower, expected.ciLower, 1e-8)
    expectClose(raw.upper, expected.ciUpper, 1e-8)
    const compared = deciding(raw, undefined, undefined)
    expect(alike({ compared, margin: expected.marginUpper, ...known }).answer === 'holds').toBe(
      expected.equivalent,
    )
  },
)

test('R’s two-sample interval that reaches over the margin is not settled', () => {
  const { estimate, se, df, ciLower, ciUpper, equivalent } = tost.expected.twoSample.pooled
  const raw = extraLoss({ n: 5, mean: 1, extra: estimate, se, df, sd: 1 }, 0.95)
  expectClose(raw.lower, ciLower, 1e-8)
  expectClose(raw.upper, ciUpper, 1e-8)
  expect(equivalent).toBe(false)
  expect(alike({ compared: deciding(raw, undefined, undefined), margin: 1, ...known }).answer).toBe(
    'not-settled',
  )
})

test('pairs without any scatter are not settled', () => {
  expect(tost.expected.noScatter.undefined).toBe(true)
  const raw = pairedExtraLoss(blocksOf([1, 2, 3]), blocksOf([1, 2, 3]), { confidence: 0.95 })
  expect(alike({ compared: deciding(raw, undefined, undefined), margin: 0.3, ...known }).because).toBe(
    'no spread',
  )
})

const interval = (lower: number, upper: number) => ({
  raw: { n: 4, mean: 1, extra: 0, se: 1, df: 3, sd: 1, lower, upper, noSpread: false },
  net: undefined,
  netOfUpper: undefined,
  interval: { lower, upper },
})

test.each([
  [-0.999, 0.999, 'holds'],
  [-1, 0.5, 'not-settled'],
  [-0.5, 1, 'not-settled'],
  [0.999, 2, 'not-settled'],
  [1, 2, 'not-settled'],
  [1.001, 2, 'does-not-hold'],
  [-2, -1, 'not-settled'],
  [-2, -1.001, 'does-not-hold'],
  [-2, 2, 'not-settled'],
] as const)('limits %f to %f against ±1: %s', (lower, upper, answer) => {
  expect(alike({ compared: interval(lower, upper), margin: 1, ...known }).answer).toBe(answer)
})

// R: t.test(x, conf.level = 0.9), one sample
test('ΔE00 between arms has the limits of one sample of R', () => {
  const { mean, ciLower90, ciUpper90 } = med.expected.oneSample
  // Values above 0, as differences of colours are: R’s sample moved by 1.
  const apart = med.data.oneSample.x.map((x) => ({ dE00: x + 1, errorShare: 1 }))
  const found = coloursCompared(apart, undefined, 0.95)
  expectClose(found.raw.extra, mean + 1, 1e-10)
  expectClose(found.interval?.lower, ciLower90 + 1, 1e-8)
  expectClose(found.interval?.upper, ciUpper90 + 1, 1e-8)
})

test('the error of a mean of several skeins is less: two against two have half the variance', () => {
  const row = (level: string, unit: string, L: number) => ({
    level,
    block: 'Mon',
    unit,
    lab: { L, a: 0, b: 0 },
  })
  const rows = [row('a', '1', 50), row('a', '2', 51), row('b', '3', 52), row('b', '4', 53)]
  const [found] = coloursApart(rows, 'a', 'b')
  expect(found?.errorShare).toBeCloseTo(Math.SQRT1_2, 12)
  expect(found?.dE00).toBe(ciede2000({ L: 50.5, a: 0, b: 0 }, { L: 52.5, a: 0, b: 0 }))
})

const noise: Noise = {
  kind: 'twins',
  rms: 0.2,
  upperRms: 0.25,
  df: 9,
  floor: 0.18,
  from: 'the twin',
  n: 3,
}
const colours = aCondition({ question: 'alike', outcome: 'colour', margin: 2 })

/** Two arms in each session, the second lighter by so much. */
function soaked(apart: readonly number[], condition = colours, parts: Parameters<typeof askedOf>[2] = {}) {
  const codes = apart.flatMap((_, i) => [`s${i}`, `d${i}`])
  const record = recordOf({
    factors: [{ key: 'soak', stage: 'soak', levels: ['Dry', 'Soaked'] }],
    sessions: apart.map((_, i) => `${i}`),
    vessels: codes.map((code) => ({
      label: code,
      stage: 'soak' as const,
      kind: 'jar' as const,
      session: code.slice(1),
    })),
    skeins: codes.map((code) => ({
      code,
      in: [code],
      level: { soak: code.startsWith('s') ? 'Soaked' : 'Dry' },
      results: [{ kind: 'lightness', value: 50 }],
    })),
  })
  const trial = judgedTrial({
    ...record,
    colours: codes.map((code, i) => ({
      skeinId: `#${code}`,
      wear: {},
      l: code.startsWith('s')
        ? 50 + (apart[Math.floor(i / 2)] ?? 0) / 2
        : 50 - (apart[Math.floor(i / 2)] ?? 0) / 2,
      a: 0,
      b: 0,
      readingsN: 1,
      spotsN: 5,
    })),
  })
  const [answer] = judgeAlike(askedOf(trial, condition, { noise, ...parts }))
  if (!answer) throw new Error('Nothing was answered.')
  return answer
}

test('two arms without a chosen one are alike when their colours are close in every session', () => {
  const found = soaked([0.9, 1.2, 0.7, 1.1])
  expect(found).toMatchObject({ answer: 'holds', n: 4, units: { many: 'sessions' } })
  // Mean 0.975, SD 0.2217; t(0.95; 3) = 2.35336: upper 1.236; ΔE00 of a step at L* 50 is the step
  expect(found.estimate?.upper).toBeCloseTo(1.236, 2)
  expect(found.reason).toMatch(
    /^(Dry and Soaked|Soaked and Dry) came out at most 1\.24 apart; you allowed 2\.0\.$/,
  )
})

test('the same asked as a loss before any wear is of colours too', () => {
  expect(soaked([0.9, 1.2, 0.7, 1.1], { ...colours, outcome: 'dE00' }).answer).toBe('holds')
})

test('colours that are far apart differ, and the measuring error is taken off first', () => {
  const found = soaked([3, 3.4, 2.9, 3.1])
  expect(found.answer).toBe('does-not-hold')
  expect(found.estimate?.lower).toBeLessThan(found.table?.lower ?? 0)
})

test('colours of two sessions are not settled, nor are any with an error that is only assumed', () => {
  expect(soaked([0.9, 1.2])).toMatchObject({ answer: 'not-settled', more: 1 })
  expect(
    soaked([0.9, 1.2, 0.7, 1.1], colours, { noise: { ...noise, kind: 'planning', df: undefined } }).answer,
  ).toBe('not-settled')
  expect(soaked([0.9, 1.2, 0.7, 1.1], colours, { noise: undefined }).answer).toBe('not-settled')
})

test('of a loss, 35 and 75 minutes of the steam ladder are alike within 1.0, with the error’s limit at both ends', () => {
  const trial = steamLadderTrial()
  const loss = aCondition({
    question: 'alike',
    outcome: 'dE00',
    wear: { W2: 3 },
    against: 'reference',
    margin: 1,
  })
  const answers = judgeAlike(askedOf(trial, loss, { noise: noiseOf(trial, loss) }))
  const at = (minutes: number) => answers.find((it) => it.levelId === `#steamTime ${minutes}`)
  expect(at(35)?.answer).toBe('holds')
  expect(at(35)?.estimate?.upper).toBeCloseTo(0.55, 2)
  expect(at(35)?.estimate?.lower).toBeLessThan(-0.5)
  expect(at(35)?.reason).toMatch(
    /^35 minutes and 75 minutes came out within 0\.5\d of each other; you allowed 1\.0\.$/,
  )
  expect(at(0)?.answer).toBe('does-not-hold')
  expect(at(20)?.answer).toBe('not-settled')
})
