import { describe, expect, test } from 'vitest'
import type { Answer } from '#api/judging/answer.ts'
import { judgeBetter } from '#api/judging/better.ts'
import { betterVerdict } from '#api/judging/better-verdict.ts'
import type { Condition } from '#api/judging/condition.ts'
import { gainsOverControl } from '#api/judging/gain-over-control.ts'
import type { Noise } from '#api/judging/noise.ts'
import { noiseDoubt } from '#api/judging/noise-doubt.ts'
import blocked from '#test/reference/stats/dunnett-blocked.json' with { type: 'json' }
import least from '#test/reference/stats/gain-least-signflip.json' with { type: 'json' }
import sleep from '#test/reference/stats/gain-published-sleep.json' with { type: 'json' }
import { judgedRecord, type SkeinWritten } from '#test/support/a-record.ts'
import { aCondition, askedOf } from '#test/support/asked-of.ts'
import { expectClose } from '#test/support/close-to.ts'
import { numberIn, storyRows } from '#test/support/story-rows.ts'

const staining = aCondition({ question: 'better', outcome: 'staining dE76', against: 'control' })
const spread = aCondition({
  question: 'better',
  outcome: 'spread',
  against: 'reference',
  direction: 'larger is better',
})

/** Eight skeins, each cut in four; each quarter in a jar of its own. */
function rescue(arms: readonly string[], names: Readonly<Record<string, string>>) {
  const rows = storyRows('bleeding-rescue.csv')
  return judgedRecord({
    pattern: 'P4',
    block: 'parent',
    factors: [{ key: 'remedy', stage: 'remedy', levels: [...arms], reference: 'Plain water' }],
    vessels: rows.flatMap((row) =>
      arms.map((arm) => ({
        label: `${row.skein} ${arm}`,
        stage: 'remedy' as const,
        kind: 'jar' as const,
      })),
    ),
    skeins: rows.flatMap((row): SkeinWritten[] => [
      { code: `S${row.skein}` },
      ...arms.map((arm) => ({
        code: `S${row.skein} ${arm}`,
        cutFrom: `S${row.skein}`,
        in: [`${row.skein} ${arm}`],
        level: { remedy: arm },
        results: [{ kind: 'staining dE76', value: numberIn(row, names[arm] ?? '') ?? Number.NaN }],
      })),
    ]),
  })
}
const columns = {
  'Plain water': 'cold_water',
  'Cold vinegar': 'cold_vinegar',
  'Hot detergent': 'hot_detergent_60C',
  Reheating: 'reheat_acid_85C',
}

/** Benches with a pot of each schedule. */
function separation(arms: readonly string[], reference: string) {
  const rows = storyRows('class-separation.csv').filter((row) => arms.includes(row.schedule ?? ''))
  const benches = [...new Set(rows.map((row) => `bench ${row.bench}`))]
  const name = (row: Record<string, string>) => `${row.schedule} ${row.bench}`
  return judgedRecord({
    pattern: 'P7',
    factors: [{ key: 'acid schedule', stage: 'dye', levels: [...arms], reference }],
    sessions: benches,
    vessels: rows.map((row) => ({
      label: name(row),
      stage: 'dye' as const,
      session: `bench ${row.bench}`,
    })),
    skeins: rows.map((row): SkeinWritten => {
      const value = numberIn(row, 'spread_dE00')
      return {
        code: `skein ${name(row)}`,
        in: [name(row)],
        level: { 'acid schedule': row.schedule ?? '' },
        ...(value === undefined ? { lost: 'boiled dry' } : { results: [{ kind: 'spread', value }] }),
      }
    }),
  })
}

const named = (answers: readonly Answer[], name: string) =>
  answers.find(({ levelId }) => levelId?.endsWith(` ${name}`))

describe('the story of the bleeding skeins', () => {
  // stories/README: two-sided 95 %, each remedy by itself against plain water.
  test.each([
    ['Cold vinegar', 'does-not-hold', 0.2, -0.6, 0.9],
    ['Hot detergent', 'holds', 7.8, 6.3, 9.3],
    ['Reheating', 'holds', 8.7, 7.5, 10.0],
  ] as const)('%s %s: gain %d (%d to %d)', (arm, answer, gain, lower, upper) => {
    const trial = rescue(['Plain water', arm], columns)
    const [found] = judgeBetter(askedOf(trial, staining, { confidence: 0.975 }))
    expect(found).toMatchObject({ answer, n: 8, units: { one: 'skein', many: 'skeins' } })
    expect(found?.estimate).toMatchObject({ confidence: 0.95, unit: 'ΔE*ab' })
    expect(found?.estimate?.value).toBeCloseTo(gain, 1 - 0.01)
    expect(Math.abs((found?.estimate?.lower ?? 99) - lower)).toBeLessThan(0.0501)
    expect(Math.abs((found?.estimate?.upper ?? 99) - upper)).toBeLessThan(0.0501)
  })

  test('all three together: Dunnett, and each arm has its own answer and sentence', () => {
    const answers = judgeBetter(askedOf(rescue(Object.keys(columns), columns), staining))
    expect(answers.map(({ answer }) => answer)).toEqual(['does-not-hold', 'holds', 'holds'])
    // By hand: residual mean square 1.212 on 21 df, SE 0.550; 2.18 for three arms, between 2.19 (20 df) and 2.17 (24 df)
    // of Dunnett (1955), table 1a (from memory): 0.16 − 1.20 and 0.16 + 1.20.
    expect(named(answers, 'Cold vinegar')?.reason).toBe(
      'Cold vinegar is no better than Plain water: the gain is 0.2 ΔE*ab (−1.0 to 1.4); more than 2.0 was asked.',
    )
    expect(named(answers, 'Hot detergent')?.reason).toMatch(
      /^Hot detergent is better than Plain water by 7\.8 ΔE\*ab \(6\.\d to 9\.\d\); more than 2\.0 was asked\.$/,
    )
    expect(named(answers, 'Hot detergent')?.method[0]).toContain(
      'Dunnett’s limits for 3 arms against Plain water',
    )
  })

  test('one pattern of signs in 256 has so large a gain, and that is said beside', () => {
    const [found] = judgeBetter(askedOf(rescue(['Plain water', 'Hot detergent'], columns), staining))
    expect(found?.figures.signFlipP).toBe(1 / 256)
    expect(found?.method.at(-1)).toBe(
      'By flipping signs, all 256 patterns, p = 0.0039 one-sided; it stands beside and decides nothing.',
    )
  })
})

describe('the story of the class', () => {
  // stories/README: two-sided 95 %.
  test.each([
    ['two doses', 'all at start', 7.5, 5.6, 9.4, 8],
    ['four doses', 'two doses', 5.1, 2.3, 7.8, 7],
  ] as const)('%s beside %s: %d (%d to %d) on %d benches', (arm, control, gain, lower, upper, n) => {
    const [found] = judgeBetter(askedOf(separation([control, arm], control), spread, { confidence: 0.975 }))
    expect(found).toMatchObject({ answer: 'holds', n, units: { one: 'bench', many: 'benches' } })
    expect(found?.estimate?.value).toBeCloseTo(gain, 1 - 0.01)
    expect(Math.abs((found?.estimate?.lower ?? 99) - lower)).toBeLessThan(0.0501)
    expect(Math.abs((found?.estimate?.upper ?? 99) - upper)).toBeLessThan(0.0501)
  })

  test('the pot that boiled dry lowers n and is said', () => {
    const [found] = judgeBetter(askedOf(separation(['two doses', 'four doses'], 'two doses'), spread))
    expect(found?.n).toBe(7)
    expect(found?.cautions).toEqual(['Four doses: 1 of 8 lost before it was read (boiled dry).'])
  })
})

// R t.test: one-sided limits of the mean gain at 95 % (or 90 %), and whether they are above the least gain.
describe('one arm is judged by R’s one-sided limits', () => {
  type Case = {
    leastGain: number
    alpha: number
    t: { oneSidedLower: number; oneSidedUpper: number; betterByLeast: boolean }
  }
  const all: Readonly<Record<string, readonly number[]>> = least.data
  const cases = [
    ...Object.entries(least.expected)
      .filter(([name]) => name !== 'allEqual5')
      .flatMap(([name, hows]) =>
        Object.entries(hows).map(([how, it]) => ({
          name: `${name} ${how}`,
          gains: all[name] ?? [],
          it: it as Case,
        })),
      ),
    ...Object.entries(sleep.expected).map(([how, it]) => ({
      name: `sleep ${how}`,
      gains: sleep.data.d,
      it: it as Case,
    })),
  ]
  test.each(cases)('$name', ({ gains, it }) => {
    const rows = gains.flatMap((gain, i) => [
      { arm: 'now', block: String(i), unit: `now ${i}`, value: 10 + i },
      { arm: 'new', block: String(i), unit: `new ${i}`, value: 10 + i + gain },
    ])
    const [found] = gainsOverControl(rows, {
      control: 'now',
      direction: 'larger is better',
      confidence: 1 - it.alpha,
      blocked: true,
    })
    expectClose(found?.deciding?.lower, it.t.oneSidedLower, 1e-9)
    expectClose(found?.deciding?.upper, it.t.oneSidedUpper, 1e-9)
    const { answer } = betterVerdict({
      deciding: found?.deciding,
      least: it.leastGain,
      n: gains.length,
      units: gains.length,
      missing: 0,
      noiseStops: false,
    })
    expect(answer === 'holds').toBe(it.t.betterByLeast)
  })
})

test('three arms in complete blocks have R’s simultaneous limits, turned round where smaller is better', () => {
  const rows = blocked.data.complete.map(({ arm, block, y }) => ({ arm, block, unit: arm + block, value: y }))
  const question = { control: 'now', confidence: 0.95, blocked: true }
  const up = gainsOverControl(rows, { ...question, direction: 'larger is better' })
  const down = gainsOverControl(rows, { ...question, direction: 'smaller is better' })
  const { greater, less } = blocked.expected.complete.fixedBlock
  for (const [i, known] of greater.comparisons.entries()) {
    expectClose(up[i]?.deciding?.lower, known.limit, 1e-7)
    expectClose(up[i]?.deciding?.upper, less.comparisons[i]!.limit, 1e-7)
    expectClose(down[i]?.deciding?.upper, -known.limit, 1e-7)
    expectClose(down[i]?.deciding?.lower, -less.comparisons[i]!.limit, 1e-7)
  }
})

describe('the least gain, just under, at, just over', () => {
  const known = { n: 5, units: 5, missing: 0, noiseStops: false }
  test.each([
    [2.001, 9, 2, 'holds', 'better'],
    [2, 9, 2, 'not-settled', 'limit'],
    [1.999, 9, 2, 'not-settled', 'limit'],
    [0.5, 1.999, 2, 'does-not-hold', 'no better'],
    [0.5, 2, 2, 'not-settled', 'limit'],
    [0.5, 2.001, 2, 'not-settled', 'limit'],
    [-3, -0.001, 2, 'does-not-hold', 'worse'],
    // Any gain will do: then “no better” is never said.
    [0.001, 9, 0, 'holds', 'better'],
    [0, 9, 0, 'not-settled', 'limit'],
    [-1, 0, 0, 'not-settled', 'limit'],
    [-1, -0.001, 0, 'does-not-hold', 'worse'],
  ] as const)('limits %d to %d against %d: %s', (lower, upper, least, answer, because) => {
    expect(betterVerdict({ ...known, deciding: { lower, upper }, least })).toEqual({ answer, because })
  })

  test('what stops a claim never makes a “no better”, and never keeps one back', () => {
    const better = { ...known, deciding: { lower: 3, upper: 4 }, least: 2 }
    expect(betterVerdict({ ...better, n: 2 }).because).toBe('few blocks')
    expect(betterVerdict({ ...better, n: 3 }).because).toBe('better')
    expect(betterVerdict({ ...better, missing: 1 }).because).toBe('missing')
    expect(betterVerdict({ ...better, noiseStops: true }).because).toBe('noise')
    expect(betterVerdict({ ...better, units: 1 }).because).toBe('one unit')
    const not = { ...better, deciding: { lower: 0, upper: 1 }, noiseStops: true, missing: 1 }
    expect(betterVerdict(not).answer).toBe('does-not-hold')
    expect(betterVerdict({ ...not, units: 1 }).answer).toBe('not-settled')
  })
})

describe('colours are read with an error', () => {
  const loss = aCondition({ question: 'better', outcome: 'dE00', against: 'control', leastGain: 1 })
  const known: Noise = { kind: 'twins', rms: 0.3, upperRms: 0.4, df: 12, floor: 0.28, from: 'twins', n: 4 }
  const trial = (now: readonly number[], hot: readonly number[]) => lossTrial({ now, hot })
  const well = trial([4, 4.2, 3.9, 4.1], [2, 2.1, 2.2, 2])

  test('the lower limit is the smallest of raw and net, the upper the larger: both must say it', () => {
    // By hand with sign(ΔE² − r²)·√|ΔE² − r²|: the small values shrink, so the net gain is larger than the raw one.
    const [found] = judgeBetter(askedOf(trial([0.9, 1.0, 1.1], [0.5, 0.5, 0.6]), loss, { noise: known }))
    const { table, estimate, figures } = found!
    const net = [
      [0.9, 0.5],
      [1.0, 0.5],
      [1.1, 0.6],
    ].map(([now, hot]) => Math.sqrt(now! ** 2 - 0.09) - Math.sqrt(hot! ** 2 - 0.09))
    expectClose(table?.netExtra, net.reduce((a, b) => a + b) / 3, 1e-12)
    expect(table!.netExtra!).toBeGreaterThan(table!.extra!)
    expect(estimate?.lower).toBe(Math.min(table!.lower!, figures.netLower!))
    expect(estimate?.upper).toBe(table?.netUpper)
    expect(estimate?.upper).toBeGreaterThan(table!.upper!)
  })

  test('noise never makes a better: no gain under the least that was asked is shown by taking it off', () => {
    // Read: about 0.95 less. Without the error it would be about 1.05 less, with its upper limit 1.14.
    const near = trial(
      [1.55, 1.56, 1.54, 1.55],
      [0.6, 0.61, 0.59, 0.6].map((it, i) => it + i / 1000),
    )
    const asked = { ...known, rms: 0.35, upperRms: 0.45, floor: 0.32 }
    const [found] = judgeBetter(askedOf(near, loss, { noise: asked }))
    expect(found?.table?.netExtra).toBeGreaterThan(1)
    expect(found?.answer).toBe('not-settled')
  })

  test('an error that is known lets a plain gain stand', () => {
    expect(judgeBetter(askedOf(well, loss, { noise: known }))[0]?.answer).toBe('holds')
  })

  test.each<[string, Noise | undefined, string]>([
    ['is not known', undefined, 'not known'],
    ['is only assumed', { ...known, kind: 'planning', df: undefined }, 'only assumed'],
    ['is over half of what was asked', { ...known, floor: 0.501 }, 'more than half of 1.0'],
    ['is over a third with 5 degrees of freedom', { ...known, floor: 0.334, df: 5.9 }, 'too little known'],
  ])('where it %s, nothing is called better', (_, noise, says) => {
    const [found] = judgeBetter(askedOf(well, loss, { noise }))
    expect(found?.answer).toBe('not-settled')
    expect(found?.reason).toContain(says)
  })

  test.each([
    [0.5, 12, false],
    [0.501, 12, true],
    [1 / 3, 5.9, false],
    [0.334, 5.9, true],
    [0.334, 6, false],
    [0.334, undefined, false],
  ])('a floor of %d with %d degrees of freedom beside 1.0 stops it: %s', (floor, df, stops) => {
    expect(noiseDoubt({ kind: 'twins', floor, df }, 1) !== undefined).toBe(stops)
  })

  test('stains need no twin of the skein', () => {
    const found = judgeBetter(askedOf(rescue(['Plain water', 'Reheating'], columns), staining))
    expect(found[0]?.answer).toBe('holds')
  })
})

function lossTrial(arms: Readonly<Record<string, readonly (number | undefined)[]>>, kind = 'dE00') {
  const names = Object.keys(arms)
  const sessions = [...new Set(names.flatMap((arm) => (arms[arm] ?? []).map((_, i) => `day ${i + 1}`)))]
  return judgedRecord({
    pattern: 'P4',
    factors: [{ key: 'way', stage: 'dye', levels: names, reference: names[0] ?? '' }],
    sessions,
    vessels: names.flatMap((arm) =>
      sessions.map((session) => ({
        label: `${arm} ${session}`,
        stage: 'dye' as const,
        kind: 'jar' as const,
        session,
      })),
    ),
    skeins: names.flatMap((arm) =>
      (arms[arm] ?? []).map(
        (value, i): SkeinWritten => ({
          code: `${arm} skein ${i + 1}`,
          in: [`${arm} day ${i + 1}`],
          level: { way: arm },
          results: value === undefined ? [] : [{ kind, value }],
        }),
      ),
    ),
  })
}

describe('by grades', () => {
  const grades = aCondition({ question: 'better', outcome: 'staining', direction: 'larger is better' })
  const judged = (
    now: readonly (number | undefined)[],
    ...arms: readonly (readonly (number | undefined)[])[]
  ) => {
    const written = Object.fromEntries([
      ['now', now],
      ...arms.map((arm, i) => [`arm ${i + 1}`, arm] as const),
    ])
    return judgeBetter(askedOf(lossTrial(written, 'staining'), grades))
  }
  const many = (n: number, grade: number) => Array.from({ length: n }, () => grade)

  test('five pairs all one way by the same step are better, though there is no spread between them', () => {
    const [found] = judged(many(5, 3), many(5, 4))
    expect(found).toMatchObject({ answer: 'holds', n: 5, estimate: null, table: null })
    expect(found?.reason).toBe('Arm 1 was better than now in 5 of 5 sessions.')
    expectClose(found?.figures.pBetter, 1 / 32, 1e-12)
  })

  test('four pairs never are, and one more is asked for', () => {
    const [found] = judged(many(4, 3), many(4, 4))
    expect(found).toMatchObject({ answer: 'not-settled', more: 1 })
    expect(found?.reason).toBe(
      'Not shown to be better: arm 1 was better in 4 of 4 sessions, and 5 or more are needed.',
    )
  })

  test('a tie counts against: 4 of 5 are not enough, 7 of 8 are (9 in 256)', () => {
    expect(judged(many(5, 3), [4, 4, 4, 4, 3])[0]?.answer).toBe('not-settled')
    const [found] = judged(many(8, 3), [...many(7, 4), 3])
    expect(found?.answer).toBe('holds')
    expectClose(found?.figures.pBetter, 9 / 256, 1e-12)
    expect(judged(many(7, 3), [...many(6, 4), 3])[0]?.answer).toBe('not-settled')
  })

  test('half a grade is worth having unless more was asked', () => {
    expect(judged(many(5, 3), many(5, 3.5))[0]?.answer).toBe('holds')
    const trial = lossTrial({ now: many(5, 3), arm: many(5, 3.5) }, 'staining')
    const one = { ...grades, leastGain: 1 }
    expect(judgeBetter(askedOf(trial, one))[0]).toMatchObject({ answer: 'does-not-hold' })
  })

  test('none better in five is no better, and up to 45 % may still be; none in four says nothing', () => {
    const [found] = judged(many(5, 3), [3, 3, 2.5, 3, 3])
    expect(found?.answer).toBe('does-not-hold')
    expect(found?.reason).toBe(
      'Arm 1 was better than now in none of 5 sessions; up to 45\u00a0% may still be.',
    )
    expect(judged(many(4, 3), many(4, 3))[0]?.answer).toBe('not-settled')
  })

  test('worse in five of five is worse', () => {
    const [found] = judged(many(5, 3), many(5, 2))
    expect(found).toMatchObject({ answer: 'does-not-hold' })
    expect(found?.reason).toBe('Arm 1 was worse than now in 5 of 5 sessions.')
  })

  test('two arms share the chance: five pairs are then not enough, six are', () => {
    expect(judged(many(5, 3), many(5, 4), many(5, 4)).map(({ answer }) => answer)).toEqual([
      'not-settled',
      'not-settled',
    ])
    expect(judged(many(6, 3), many(6, 4), many(6, 4)).map(({ answer }) => answer)).toEqual(['holds', 'holds'])
  })

  test('bled or not counts the same way', () => {
    const bled: Condition = { ...grades, outcome: 'bled', direction: 'smaller is better' }
    const trial = lossTrial({ now: many(5, 1), hot: many(5, 0) }, 'bled')
    expect(judgeBetter(askedOf(trial, bled))[0]).toMatchObject({ answer: 'holds', n: 5 })
  })

  test('a result that is not in keeps it open', () => {
    const [found] = judged(many(6, 3), [4, 4, 4, 4, 4, undefined])
    expect(found).toMatchObject({ answer: 'not-settled', n: 5 })
    expect(found?.reason).toBe('1 result of arm 1 or now is not recorded yet.')
  })
})

describe('what is never a claim', () => {
  const rinses = aCondition({ question: 'better', outcome: 'my own count', against: 'control' })
  const judged = (arms: Readonly<Record<string, readonly (number | undefined)[]>>) =>
    judgeBetter(askedOf(lossTrial(arms, 'my own count'), rinses))[0]

  test('two sessions, however far apart', () => {
    expect(judged({ now: [9, 9.1], hot: [1, 1.2] })).toMatchObject({ answer: 'not-settled', n: 2 })
  })

  test('the same difference every time', () => {
    const found = judged({ now: [5, 6, 7], hot: [3, 4, 5] })
    expect(found?.answer).toBe('not-settled')
    expect(found?.reason).toContain('were values copied or rounded?')
  })

  test('no control', () => {
    const trial = lossTrial({ now: [5, 6, 7.1], hot: [3, 4, 5] }, 'my own count')
    const found = judgeBetter(askedOf(trial, rinses, { reference: undefined }))
    expect(found.map(({ answer }) => answer)).toEqual(['not-settled', 'not-settled'])
    expect(found[0]?.reason).toBe('Choose the control that the others are held against.')
  })

  test('an arm that nothing was read of', () => {
    expect(judged({ now: [5, 6, 7], hot: [undefined, undefined, undefined] })).toMatchObject({
      answer: 'not-settled',
      n: 0,
      reason: 'Nothing is recorded of hot yet.',
    })
  })

  test('quarters that were all treated in one jar are one', () => {
    const parents = [1, 2, 3, 4, 5]
    const trial = judgedRecord({
      block: 'parent',
      factors: [{ key: 'remedy', stage: 'remedy', levels: ['now', 'hot'], reference: 'now' }],
      vessels: [
        { label: 'cold jar', stage: 'remedy' },
        { label: 'hot jar', stage: 'remedy' },
      ],
      skeins: parents.flatMap((parent): SkeinWritten[] => [
        { code: `S${parent}` },
        ...(['now', 'hot'] as const).map((level) => ({
          code: `S${parent} ${level}`,
          cutFrom: `S${parent}`,
          in: [level === 'now' ? 'cold jar' : 'hot jar'],
          level: { remedy: level },
          results: [{ kind: 'my own count', value: level === 'now' ? 9 + parent / 10 : 3 + parent / 7 }],
        })),
      ]),
    })
    const [found] = judgeBetter(askedOf(trial, rinses))
    expect(found?.answer).toBe('not-settled')
    expect(found?.reason).toBe('Hot or now was done only once, so nothing can be said of it.')
  })
})

test('without blocks the units stand one by one, and a spread that all arms share', () => {
  const values = { now: [9.1, 8.7, 9.4, 9.0], hot: [4.2, 4.9, 4.4, 4.6] }
  const condition = aCondition({
    question: 'better',
    outcome: 'my own count',
    against: 'control',
    leastGain: 4,
  })
  const [found] = judgeBetter(askedOf(lossTrial(values, 'my own count'), condition, { method: 'pooled' }))
  // Pooled by hand: means 9.05 and 4.525, squares 0.25 and 0.2675, 6 df; t(0.95, 6) = 1.943180.
  const reach = 1.9431802805153 * Math.sqrt((0.25 + 0.2675) / 6 / 2)
  expectClose(found?.estimate?.value, 4.525, 1e-12)
  expectClose(found?.estimate?.lower, 4.525 - reach, 1e-10)
  expect(found).toMatchObject({ answer: 'holds', n: 4, units: { one: 'jar', many: 'jars' } })
})
