import { expect, test } from 'vitest'
import { leastLevelThatHolds } from '#api/science/verdicts/least-level-that-holds.ts'
import type { LevelRow } from '#api/science/verdicts/level-rows.ts'
import reference from '#test/reference/stats/tost-noninferiority-med.json' with { type: 'json' }
import { ladderLimits, steamLadder, twinNoise } from '#test/support/steam-ladder.ts'

const ladder: LevelRow[] = steamLadder().map((row) => ({ ...row, block: row.session }))
const stepAt = (verdict: ReturnType<typeof leastLevelThatHolds>, level: number | string) => {
  const step = verdict.steps.find((it) => it.level === level)
  if (step === undefined) throw new Error(`No step at ${level}`)
  return step
}

/** Rows of one level in sessions 1, 2, 3 … */
const at = (level: number | string, ...values: (number | undefined)[]): LevelRow[] =>
  values.map((value, i) => ({ level, block: i + 1, value }))

// Every figure of the table: domain, section 7 (worked by hand there, with t 2.353 for 3 degrees of freedom)
const workedLadder = [
  { level: 50, mean: 1.02, extra: 0.02, upper: 0.77, stain: 4, rinses: 4, felt: 3, answer: 'holds' },
  { level: 35, mean: 1.02, extra: 0.02, upper: 0.5, stain: 4.5, rinses: 4, felt: 2, answer: 'holds' },
  { level: 20, mean: 2.32, extra: 1.31, upper: 1.9, stain: 3, rinses: 5, felt: 1, answer: 'does-not-hold' },
  { level: 10, mean: 5.16, extra: 4.15, upper: 4.91, stain: 3, rinses: 7, felt: 1, answer: 'does-not-hold' },
  {
    level: 0,
    mean: 11.13,
    extra: 10.13,
    upper: 10.52,
    stain: 1.5,
    rinses: 9,
    felt: 1,
    answer: 'does-not-hold',
  },
]

test.each(workedLadder)('the worked ladder comes out to the digits shown at $level minutes', (worked) => {
  const step = stepAt(leastLevelThatHolds(ladder, { margin: 1, limits: ladderLimits }), worked.level)
  expect(step.mean).toBeCloseTo(worked.mean, 2)
  expect(step.extra).toBeCloseTo(worked.extra, 2)
  expect(step.upper).toBeCloseTo(worked.upper, 2)
  expect(step.n).toBe(4)
  expect(step.df).toBe(3)
  expect(step.limits.map((it) => it.worst)).toEqual([worked.stain, worked.rinses, worked.felt])
  expect(step.answer).toBe(worked.answer)
})

test('35 minutes is the least that holds in the worked ladder, and felting makes it the whole window', () => {
  const verdict = leastLevelThatHolds(ladder, { margin: 1, limits: ladderLimits, noiseRms: twinNoise.rms })
  expect(verdict).toMatchObject({ verdict: 'holds', least: 35, reference: 75, window: { from: 35, to: 35 } })
  // Net of noise: domain, section 7
  expect(stepAt(verdict, 50).net?.upper).toBeCloseTo(0.8, 2)
  expect(stepAt(verdict, 35).net?.upper).toBeCloseTo(0.53, 2)
})

test('by its loss alone 20 minutes of the worked ladder is not settled', () => {
  const step = stepAt(leastLevelThatHolds(ladder, { margin: 1 }), 20)
  expect(step.answer).toBe('not-settled')
  expect(step.lower).toBeCloseTo(0.73, 2)
})

test('two runs of the worked ladder settle nothing', () => {
  const two = ladder.filter((row) => row.block === 'run 1' || row.block === 'run 2')
  const verdict = leastLevelThatHolds(two, { margin: 1, limits: ladderLimits })
  expect(verdict).toMatchObject({ verdict: 'not-settled', least: undefined })
  expect(stepAt(leastLevelThatHolds(two, { margin: 1 }), 20).extra).toBeCloseTo(1.33, 2)
})

// Minimum dose in fixed order, one-way with a common variance and paired within days: reference/stats, computed by R 4.2.2
const { minimumDose, minimumDoseBlocked } = reference.data
test.each(reference.expected.minimumDose.steps)(
  'pooled over groups, dose $dose has the limits of another program',
  (step) => {
    const rows = minimumDose.rows.map(({ dose, y }) => ({ level: dose, value: y }))
    const verdict = leastLevelThatHolds(rows, { margin: minimumDose.margin })
    expect(verdict.method).toBe('pooled')
    expect(verdict.least).toBe(reference.expected.minimumDose.minimumDoseFixedSequence)
    const own = stepAt(verdict, step.dose)
    expect(own.extra).toBeCloseTo(step.difference, 9)
    expect(own.se).toBeCloseTo(step.se, 9)
    expect(own.df).toBe(step.df)
    expect(own.upper).toBeCloseTo(step.upper95OneSided, 8)
    expect(own.holds).toBe(step.nonInferior)
  },
)

test.each(reference.expected.minimumDoseBlocked.steps)(
  'within days, dose $dose has the limits of another program',
  (step) => {
    const rows = minimumDoseBlocked.rows.map(({ dose, block, y }) => ({ level: dose, block, value: y }))
    const paired = stepAt(leastLevelThatHolds(rows, { margin: 1 }), step.dose)
    expect(paired.extra).toBeCloseTo(step.difference, 9)
    expect(paired.se).toBeCloseTo(step.paired.se, 9)
    expect(paired.df).toBe(step.paired.df)
    expect(paired.upper).toBeCloseTo(step.paired.upper95OneSided, 8)
  },
)

test('a short time that happens to hold does not count below one that failed', () => {
  const rows = [...at(10, 1, 1.1, 0.9), ...at(30, 4, 4.2, 4.1), ...at(60, 1, 1, 1.1)]
  const verdict = leastLevelThatHolds(rows, { margin: 1 })
  expect(verdict).toMatchObject({ verdict: 'does-not-hold', least: undefined })
  expect(stepAt(verdict, 10)).toMatchObject({ answer: 'holds', holds: false })
})

test('two sessions are never enough to hold', () => {
  const verdict = leastLevelThatHolds([...at(30, 1, 1.1), ...at(60, 1, 1.2)], { margin: 100 })
  expect(verdict.verdict).toBe('not-settled')
})

test('equal differences in every session are copied values, not certainty', () => {
  const verdict = leastLevelThatHolds([...at(30, 1.1, 1.2, 1.3), ...at(60, 1, 1.1, 1.2)], { margin: 1 })
  expect(verdict.verdict).toBe('not-settled')
  expect(stepAt(verdict, 30)).toMatchObject({ noSpread: true, upper: undefined })
  expect(verdict.blocksNeeded).toHaveProperty('unavailable')
})

test('a side limit broken in one session is enough', () => {
  const rows = at(30, 1, 1.1, 0.9).map((row, i) => ({ ...row, side: { stain: i === 0 ? 3.5 : 5 } }))
  const full = at(60, 1, 1, 1.1).map((row) => ({ ...row, side: { stain: 5 } }))
  const limits = [{ side: 'stain', atLeast: 4 }]
  expect(leastLevelThatHolds([...rows, ...full], { margin: 1, limits }).verdict).toBe('does-not-hold')
  expect(leastLevelThatHolds([...rows, ...full], { margin: 1 }).verdict).toBe('holds')
})

test('a blank staining is not a met limit', () => {
  const rows = at(30, 1, 1.1, 0.9).map((row, i) => ({ ...row, ...(i > 0 ? { side: { stain: 5 } } : {}) }))
  const full = at(60, 1, 1, 1.1).map((row) => ({ ...row, side: { stain: 5 } }))
  const verdict = leastLevelThatHolds([...rows, ...full], {
    margin: 1,
    limits: [{ side: 'stain', atLeast: 4 }],
  })
  expect(verdict.verdict).toBe('not-settled')
  expect(stepAt(verdict, 30).limits).toMatchObject([{ met: true, broken: false, missing: 1 }])
})

test('nothing holds against a reference that breaks a limit itself', () => {
  const rows = [...at(30, 1, 1.1, 0.9), ...at(60, 1, 1, 1.1)].map((row) => ({
    ...row,
    side: { stain: row.level === 60 && row.block === 1 ? 3 : 5 },
  }))
  const verdict = leastLevelThatHolds(rows, { margin: 1, limits: [{ side: 'stain', atLeast: 4 }] })
  expect(verdict).toMatchObject({ verdict: 'does-not-hold', least: undefined })
  expect(stepAt(verdict, 30)).toMatchObject({ answer: 'holds', holds: false })
})

test('felting closes the window from above and never stops the steps', () => {
  const felt = new Map<LevelRow['level'], number>([
    [10, 1],
    [20, 2],
    [30, 3],
    [60, 4],
  ])
  const rows = [...at(10, 4, 4.2, 4.1), ...at(20, 1, 1.1, 0.9), ...at(30, 1, 0.9, 1.1), ...at(60, 1, 1, 1.1)]
  const limits = [{ side: 'felt', atMost: 2, end: 'high' as const }]
  const withFelting = rows.map((row) => ({ ...row, side: { felt: felt.get(row.level) } }))
  expect(leastLevelThatHolds(withFelting, { margin: 1, limits })).toMatchObject({
    verdict: 'holds',
    least: 20,
    window: { from: 20, to: 20 },
  })
  const allFelted = rows.map((row) => ({ ...row, side: { felt: row.level === 10 ? 1 : 3 } }))
  const empty = leastLevelThatHolds(allFelted, { margin: 1, limits })
  expect(empty).toMatchObject({ verdict: 'holds', least: 20 })
  expect(empty.window).toHaveProperty('unavailable')
})

test('larger may be better: the loss is then what is less than at the reference', () => {
  const rows = [...at('short', 8, 8.4, 8.1), ...at('long', 9, 9.1, 9.2)]
  const verdict = leastLevelThatHolds(rows, {
    margin: 2,
    order: ['short', 'long'],
    direction: 'larger-is-better',
  })
  expect(stepAt(verdict, 'short').extra).toBeCloseTo((1 + 0.7 + 1.1) / 3, 12)
  expect(verdict.verdict).toBe('holds')
})

test('three skeins of one packet weigh as one', () => {
  const packets = at(30, 1, 1.1, 0.9).map((row) => ({ ...row, vessel: 'a' }))
  const three = packets.flatMap((row) =>
    [-0.5, 0, 0.5].map((more) => ({ ...row, value: (row.value ?? 0) + more })),
  )
  const full = at(60, 1, 1, 1.1)
  const one = stepAt(leastLevelThatHolds([...packets, ...full], { margin: 1 }), 30)
  const many = stepAt(leastLevelThatHolds([...three, ...full], { margin: 1 }), 30)
  expect(many.n).toBe(3)
  expect(many.upper).toBeCloseTo(one.upper ?? 0, 12)
})

test('vessels weigh alike within a session, however many skeins each holds', () => {
  const rows: LevelRow[] = [
    { level: 30, block: 1, vessel: 'a', value: 1 },
    { level: 30, block: 1, vessel: 'a', value: 3 },
    { level: 30, block: 1, vessel: 'b', value: 4 },
    ...at(60, 1),
  ]
  expect(stepAt(leastLevelThatHolds(rows, { margin: 1 }), 30).mean).toBe(3)
})

test('a session without the reference is left out and said', () => {
  const verdict = leastLevelThatHolds([...at(30, 1, 1.1, 0.9, 7), ...at(60, 1, 1, 1.1)], { margin: 1 })
  expect(stepAt(verdict, 30)).toMatchObject({ n: 3, mean: expect.closeTo(1, 12) })
  expect(verdict.cautions.join(' ')).toContain('does not hold the reference')
})

test('rows without a result are counted and not used', () => {
  const verdict = leastLevelThatHolds([...at(30, 1, undefined, 0.9), ...at(60, 1, 1, 1.1)], { margin: 1 })
  expect(stepAt(verdict, 30).n).toBe(2)
  expect(verdict.cautions.join(' ')).toContain('1 row has no result')
})

test('noise makes an extra loss too small, so a level must hold net of noise too', () => {
  // Both near a noise of 0.9: the reference lost nothing, the level 0.8; raw they differ by 0.3.
  const rows = [...at(30, 1.21, 1.2, 1.22), ...at(60, 0.9, 0.91, 0.9)]
  const raw = leastLevelThatHolds(rows, { margin: 0.5 })
  const net = leastLevelThatHolds(rows, { margin: 0.5, noiseRms: 0.9 })
  expect([raw.verdict, net.verdict]).toEqual(['holds', 'not-settled'])
})

test('values too large to reckon with are not settled, and never NaN', () => {
  const verdict = leastLevelThatHolds([...at(30, 1e308, 1e308, -1e308), ...at(60, -1e308, 1e308, 1e308)], {
    margin: 1,
  })
  expect(verdict.verdict).toBe('not-settled')
  expect(stepAt(verdict, 30).unavailable).toContain('too large')
})

test('what cannot be judged is refused in plain words', () => {
  expect(() => leastLevelThatHolds(at(30, 1), { margin: 0 })).toThrow(RangeError)
  expect(() => leastLevelThatHolds(at(30, 1), { margin: 1, reference: 60 })).toThrow(/reference/)
  expect(() => leastLevelThatHolds(at('long', 1), { margin: 1 })).toThrow(/order/)
  expect(() => leastLevelThatHolds(at(30, 1), { margin: 1, order: [20, 60] })).toThrow(/not in the order/)
  expect(() => leastLevelThatHolds([{ level: 30, value: 1 }], { margin: 1, method: 'paired' })).toThrow(
    /blocks/,
  )
})

test('four sessions say about how many are needed, by the upper limit of their spread', () => {
  // SD of differences 0.5, extra 0: χ²(0.2; 3) = 1.0052 gives an SD of 0.864, so margin ÷ SD = 1.157. Domain, section 5, has 8 runs
  // for 1 and 5 for 1.5, so it lies between.
  const d = 0.5 * Math.sqrt(3 / 4)
  const rows = [...at(30, 2 + d, 2 - d, 2 + d, 2 - d), ...at(60, 2, 2, 2, 2)]
  const verdict = leastLevelThatHolds(rows, { margin: 1, confidence: 0.999 })
  expect(verdict.verdict).toBe('not-settled')
  const usual = leastLevelThatHolds(
    rows.map((row) => ({ ...row, side: {} })),
    { margin: 1, limits: [{ side: 'stain', atLeast: 4 }] },
  )
  if (!('blocks' in usual.blocksNeeded)) throw new Error('expected a number')
  expect(usual.blocksNeeded.blocks).toBeGreaterThan(5)
  expect(usual.blocksNeeded.blocks).toBeLessThan(8)
})

test('with fewer than four sessions only a spread that was planned for tells how many are needed', () => {
  const rows = [...at(30, 1, 1.6), ...at(60, 1.2, 1)]
  expect(leastLevelThatHolds(rows, { margin: 1 }).blocksNeeded).toHaveProperty('unavailable')
  // The observed extra is 0.2, so 0.8 ÷ 0.8 = 1: 8 runs by domain, section 5
  expect(leastLevelThatHolds(rows, { margin: 1, sdPlanned: 0.8 }).blocksNeeded).toEqual({ blocks: 8 })
})

test('an extra loss at the margin has no number of sessions that would settle it', () => {
  const verdict = leastLevelThatHolds([...at(30, 2, 2.5, 1.5, 2), ...at(60, 1, 1, 1, 1)], { margin: 1 })
  expect(verdict.blocksNeeded).toHaveProperty('unavailable')
})
