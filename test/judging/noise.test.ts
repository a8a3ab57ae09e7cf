import { expect, test } from 'vitest'
import { driftOf, lossWithoutDrift } from '#api/judging/drift.ts'
import { judgedTrial } from '#api/judging/judged-trial.ts'
import { noiseOf } from '#api/judging/noise.ts'
import { pooledNoise, upperLimitOf } from '#api/judging/pooled-noise.ts'
import type { Role } from '#db/tables.ts'
import type { ReadingSeen, TrialRecord, TwinRecord } from '#db/trial-record.ts'
import pooled from '#test/reference/stats/noise-pooled.json' with { type: 'json' }
import { aReading } from '#test/support/a-reading.ts'
import { recordOf } from '#test/support/a-record.ts'
import { aCondition } from '#test/support/asked-of.ts'
import { expectClose } from '#test/support/close-to.ts'
import { enteredTwin, steamLadderTrial } from '#test/support/steam-ladder-record.ts'

const loss = aCondition({ question: 'no-worse', outcome: 'dE00', wear: { W2: 3 }, margin: 1 })

/** A trial with a treated skein that was read before and after three washes, and twins. */
function trialWith(
  twins: Readonly<Record<string, Role>>,
  readings: readonly ReadingSeen[],
  more: Partial<TrialRecord> = {},
) {
  const record = recordOf({
    skeins: [{ code: 'A' }, ...Object.entries(twins).map(([code, role]) => ({ code, role }))],
  })
  const treated = [
    aReading({ skein: 'A', sitting: 'before', lab: [50, 10, 10], on: '2026-03-01' }),
    aReading({ skein: 'A', sitting: 'after', lab: [52, 9, 9], on: '2026-03-08', wear: { W2: 3 } }),
  ]
  return judgedTrial({ ...record, readings: [...treated, ...readings], ...more })
}

// At L* 50 of a grey, ΔE00 of a small step in lightness is that step (CIEDE2000: S_L = 1 there).
const twin = (
  skein: string,
  sitting: string,
  on: string | undefined,
  L: number,
  rest: Partial<ReadingSeen> = {},
) => aReading({ skein, sitting, lab: [L, 0, 0], ...(on === undefined ? {} : { on }), ...rest })
const rmsOf = (readings: readonly ReadingSeen[], twins: Readonly<Record<string, Role>> = { t: 'twin' }) => {
  const found = noiseOf(trialWith(twins, readings), loss)
  return found && { rms: found.rms, df: found.df, n: found.n }
}

test('the worked check: a twin against one first reading, 0.2, 0.4, 0.3, 0.3', () => {
  const found = noiseOf(steamLadderTrial(), loss)
  expect(found).toMatchObject({
    kind: 'twins',
    n: 4,
    from: 'the dark twin of this trial, read again 4 times',
  })
  expect(found?.rms).toBeCloseTo(0.308, 3)
  expect(found?.df).toBeCloseTo(6.86, 2)
  expect(found?.upperRms).toBeCloseTo(0.419, 3)
  expect(found?.floor).toBeCloseTo(0.92 * 0.308, 2)
})

// R: sum(df*s2)/sum(df) and df*s2/qchisq(0.2, df)
test.each(['three', 'tiny'] as const)(
  'sources are pooled by their degrees of freedom, with R’s upper limit: %s',
  (name) => {
    const known = pooled.expected[name]
    const found = pooledNoise(known.sources.map(({ df, variance }) => ({ df, meanSquare: variance ?? 0 })))
    expectClose(found?.df, known.df, 1e-9)
    expectClose(found?.rms, known.pooledSd, 1e-9)
    expectClose(found?.upperRms, known.upperOneSided.sd, 1e-9)
    expectClose(upperLimitOf(1, known.df), known.upperOneSided.factorOnSd, 1e-9)
  },
)

test('a twin read on two days has the squared difference, on three degrees of freedom', () => {
  const found = rmsOf([twin('t', 'one', '2026-03-01', 49.8), twin('t', 'two', '2026-03-02', 50.2)])
  expect(found?.rms).toBeCloseTo(0.4, 3)
  expect(found).toMatchObject({ df: 3, n: 1 })
})

test('three readings of a twin have twice the variance within it', () => {
  // 49.7, 50, 50.3: variance 0.09 by hand
  const found = rmsOf([49.7, 50, 50.3].map((L, i) => twin('t', `s${i}`, `2026-03-0${i + 1}`, L)))
  expect(found?.rms).toBeCloseTo(Math.sqrt(0.18), 3)
  expect(found).toMatchObject({ df: 6, n: 2 })
})

test('readings of one sitting, or of two sittings on one day, are no repeats', () => {
  expect(rmsOf([twin('t', 'one', '2026-03-01', 49.8), twin('t', 'one', '2026-03-01', 50.2)])).toBeUndefined()
  expect(
    rmsOf([twin('t', 'one', '2026-03-01T09:00Z', 49.8), twin('t', 'two', '2026-03-01T20:59Z', 50.2)]),
  ).toBeUndefined()
  expect(
    rmsOf([twin('t', 'one', '2026-03-01T09:00Z', 49.8), twin('t', 'two', '2026-03-01T21:00Z', 50.2)]),
  ).toMatchObject({ n: 1 })
})

test('sittings without a time each stand for themselves', () => {
  expect(rmsOf([twin('t', 'one', undefined, 49.8), twin('t', 'two', undefined, 50.2)])).toMatchObject({
    n: 1,
  })
})

test('placings are averaged first, no more of them than the judged skeins had', () => {
  const later = [50.2, 51.2].map((L, i) => twin('t', 'two', '2026-03-02', L, { placing: i + 1 }))
  const found = rmsOf([twin('t', 'one', '2026-03-01', 49.8), ...later])
  // The judged skein had one placing a sitting.
  expect(found?.rms).toBeCloseTo(0.4, 3)
})

test.each([
  ['washed', { wear: { W2: 3 } }],
  ['read wet', { wet: true }],
  ['read by another instrument', { instrumentId: '#other' }],
  ['read at another number of spots', { spotsN: 3 }],
  ['photographed', { method: 'photo' as const }],
])('a twin that was %s tells nothing of this measuring error', (_, other) => {
  const found = rmsOf([twin('t', 'one', '2026-03-01', 49.8), twin('t', 'two', '2026-03-02', 50.2, other)])
  expect(found).toBeUndefined()
})

test('a twin’s difference that was entered after a wash tells nothing either', () => {
  const washed: TwinRecord = { ...enteredTwin(5, 1, '#t'), wear: { W2: 3 } }
  const trial = trialWith({ t: 'twin' }, [], { twins: [enteredTwin(0.3, 0, '#t'), washed] })
  expect(noiseOf(trial, loss)?.rms).toBeCloseTo(0.3, 12)
})

test('entered differences of one sitting are one, and each twin has its own first reading', () => {
  const trial = trialWith({ t: 'twin', u: 'twin' }, [], {
    twins: [enteredTwin(0.2, 1, '#t'), enteredTwin(0.4, 1, '#t'), enteredTwin(0.5, 2, '#u')],
  })
  const found = noiseOf(trial, loss)
  // 0.3 and 0.5, three degrees of freedom each
  expect(found?.rms).toBeCloseTo(Math.sqrt((0.09 + 0.25) / 2), 12)
  expect(found).toMatchObject({ df: 6, n: 2, from: '2 twins of this trial, read again twice in all' })
})

test('on a light card a dark twin counts whatever its days, a plain twin does not', () => {
  const light = aCondition({ question: 'light', outcome: 'light rating', wear: { 'X1 days': 70 } })
  const days = [
    twin('t', 'one', '2026-03-01', 49.8),
    twin('t', 'two', '2026-05-10', 50.2, { wear: { 'X1 days': 70 } }),
  ]
  expect(noiseOf(trialWith({ t: 'dark twin' }, days), light)?.rms).toBeCloseTo(0.4, 3)
  expect(noiseOf(trialWith({ t: 'twin' }, days), light)).toBeUndefined()
  expect(noiseOf(trialWith({ t: 'dark twin' }, days), loss)).toBeUndefined()
})

const moved = (steps: readonly number[]) =>
  steps.flatMap((step, i) => [
    twin(`t${i}`, 'one', '2026-03-01', 50),
    twin(`t${i}`, 'two', '2026-03-08', 50 + step),
  ])
const named = (n: number) =>
  Object.fromEntries(Array.from({ length: n }, (_, i) => [`t${i}`, 'twin' as const]))

test('four twins that all moved by 0.3 or so are drift, which is taken off and is no error', () => {
  const steps = [0.2, 0.4, 0.3, 0.3]
  const trial = trialWith(named(4), moved(steps))
  expect(driftOf(trial, loss)?.shift.L).toBeCloseTo(0.3, 12)
  // Variance of the four shifts by hand: 0.02 ÷ 3, on nine degrees of freedom
  const found = noiseOf(trial, loss)
  expect(found?.rms).toBeCloseTo(Math.sqrt(0.02 / 3), 3)
  expect(found?.df).toBe(9)
})

test('the shift of three twins stays in the measuring error', () => {
  const trial = trialWith(named(3), moved([0.3, 0.3, 0.3]))
  expect(driftOf(trial, loss)).toBeUndefined()
  expect(noiseOf(trial, loss)?.rms).toBeCloseTo(0.3, 3)
})

test('a loss that is all drift is none', () => {
  expect(lossWithoutDrift({ L: 50.3, a: 4, b: 5 }, { L: 0.3, a: 0, b: 0 }, { L: 0.3, a: 0, b: 0 })).toBe(0)
  expect(
    lossWithoutDrift({ L: 50.7, a: 0, b: 0 }, { L: 0.7, a: 0, b: 0 }, { L: 0.3, a: 0, b: 0 }),
  ).toBeCloseTo(0.4, 2)
})

const method = {
  method: 'instrument',
  instrumentId: '#meter',
  instrument: 'Meter',
  readingsN: 2,
  corrected: 0,
}

test('without twins the instrument’s own error stands, with an upper limit as wide as one repeat would leave', () => {
  const found = noiseOf(
    trialWith({}, [], { methods: [{ ...method, sdL: 0.1, sdA: 0.1, sdB: 0.1, sdFrom: 'gauge check' }] }),
    loss,
  )
  expect(found).toMatchObject({ kind: 'instrument', df: undefined, from: 'the gauge check of Meter' })
  expect(found?.rms).toBeCloseTo(Math.sqrt(0.06), 12)
  // χ²(0.2; 3) = 1.005 (any table)
  expect(found?.upperRms).toBeCloseTo(Math.sqrt((0.06 * 3) / 1.005), 3)
})

test('without either it is only a planning value, and twins are never pooled with the instrument’s', () => {
  const planning = { ...method, sdL: null, sdA: null, sdB: null, sdFrom: 'planning value' }
  expect(noiseOf(trialWith({}, [], { methods: [planning] }), loss)).toMatchObject({ kind: 'planning', n: 0 })
  const both = trialWith(
    { t: 'twin' },
    [twin('t', 'one', '2026-03-01', 49.8), twin('t', 'two', '2026-03-02', 50.2)],
    { methods: [{ ...method, sdL: 0.01, sdA: 0.01, sdB: 0.01, sdFrom: 'gauge check' }] },
  )
  expect(noiseOf(both, loss)?.rms).toBeCloseTo(0.4, 3)
})

test('grades, counts and yes/no have no such error', () => {
  for (const outcome of ['staining', 'rinses to 4', 'bled', 'felting', 'dye left'])
    expect(noiseOf(steamLadderTrial(), { ...loss, outcome })).toBeUndefined()
})
