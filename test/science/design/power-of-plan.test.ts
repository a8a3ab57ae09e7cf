import { expect, test } from 'vitest'
import { powerOfPlan } from '#api/science/design/power-of-plan.ts'
import { quickLadder } from '#api/science/design/quick-ladder.ts'
import { powerOfRuns } from '#api/science/design/runs-needed.ts'
import { seededRandom } from '#api/science/design/seeded-random.ts'
import { noiseOfSd, simulatedLosses } from '#api/science/design/simulated-losses.ts'
import { leastLevelThatHolds } from '#api/science/verdicts/least-level-that-holds.ts'
import type { Verdict } from '#api/science/verdicts/verdict.ts'

test('the quick judge gives the same answers as the real one, trial by trial', () => {
  const random = seededRandom('quick and real')
  const met = new Set<string>()
  for (let trial = 0; trial < 1500; trial++) {
    const sessions = 2 + random.below(6)
    const truth = {
      reference: random.uniform() * 1.5,
      extras: [random.uniform() * 2, random.uniform() * 3],
      sd: random.uniform() * 0.6,
      noiseSd: random.below(3) * 0.1,
      lost: random.below(2) * 0.15,
    }
    const values = simulatedLosses(truth, { sessions, random })
    const rule = {
      margin: 1,
      confidence: 0.95,
      noiseRms: truth.noiseSd > 0 ? noiseOfSd(truth.noiseSd).rms : undefined,
    }
    const answers: Verdict[] = []
    const quick = quickLadder({ ...rule, levels: 2, plannedSessions: sessions })
    quick.judge(values, sessions, answers)
    const rows = [...values].map((value, i) => ({
      level: 2 - Math.floor(i / sessions),
      block: i % sessions,
      value: Number.isNaN(value) ? undefined : value,
    }))
    const real = leastLevelThatHolds(rows, { ...rule, order: [0, 1, 2] })
    expect(answers).toEqual(real.steps.map((step) => step.answer))
    for (const answer of answers) met.add(answer)
  }
  expect([...met].sort()).toEqual(['does-not-hold', 'holds', 'not-settled'])
})

test('made-up trials without noise hold as often as non-central t says', () => {
  // A reference loss far from 0, so that lengths are plain numbers; SD of the differences is 0.5 × √2.
  const truth = { reference: 20, extras: [0.2], sd: 0.5, noiseSd: 0 }
  for (const sessions of [4, 6, 9]) {
    const { holds } = powerOfPlan({ looks: [sessions], margin: 1 }, truth, { trials: 20_000 })
    const exact = powerOfRuns(sessions, { distance: 0.8, sd: 0.5 * Math.SQRT2, goal: 'no-worse' })
    expect(Math.abs((holds[0] ?? 0) - exact)).toBeLessThan(4 * Math.sqrt((exact * (1 - exact)) / 20_000))
  }
})

test('noise makes raw losses hold falsely, and taking it off mends that', () => {
  // True extra = margin, a reference that loses nothing, SD 0.13 an axis. The share that holds falsely must be 5 %; the design's
  // own simulation has about a third of raw trials at 4 sessions, half at 6, and at most 7 % net of noise.
  const truth = { reference: 0, extras: [1], sd: (loss: number) => 0.25 * loss, noiseSd: 0.13 }
  const share = (sessions: number, rawOnly: boolean) =>
    powerOfPlan({ looks: [sessions], margin: 1, rawOnly }, truth).holds[0] ?? 0
  expect(share(4, true)).toBeGreaterThan(0.3)
  expect(share(6, true)).toBeGreaterThan(0.45)
  expect(share(4, false)).toBeLessThan(0.07)
  expect(share(6, false)).toBeLessThan(0.07)
})

test('looking after every session holds falsely more often than the plan allows', () => {
  const truth = { reference: 20, extras: [1], sd: 0.3, noiseSd: 0 }
  const every = powerOfPlan({ looks: [3, 4, 5, 6, 7, 8], margin: 1, confidenceAt: () => 0.95 }, truth)
  const once = powerOfPlan({ looks: [8], margin: 1 }, truth)
  expect(every.holds[0]).toBeGreaterThan(0.1)
  expect(once.holds[0]).toBeLessThan(0.06)
  const twice = powerOfPlan({ looks: [4, 6], margin: 1 }, truth)
  expect(twice.holds[0]).toBeLessThan(0.075)
})

test('a level can hold only with all above it', () => {
  const truth = { reference: 2, extras: [3, 0], sd: 0.2, noiseSd: 0.02 }
  expect(powerOfPlan({ looks: [4], margin: 1 }, truth, { trials: 500 })).toMatchObject({
    holds: [0, 0],
    verdicts: { 'does-not-hold': 1 },
  })
})

test('measuring that cannot see the margin never lets anything hold', () => {
  const truth = { reference: 0, extras: [0], sd: 0, noiseSd: 0.3 }
  expect(powerOfPlan({ looks: [8], margin: 1 }, truth, { trials: 500 }).holds).toEqual([0])
})

test('unchanged skeins show the floor and the root mean square that their noise makes', () => {
  const random = seededRandom(5)
  const n = 40_000
  const lengths = Array.from(
    simulatedLosses({ reference: 0, extras: [], sd: 0, noiseSd: 0.2 }, { sessions: n, random }),
  )
  const { floor, rms } = noiseOfSd(0.2)
  expect(lengths.reduce((sum, it) => sum + it, 0) / n).toBeCloseTo(floor, 2)
  expect(Math.sqrt(lengths.reduce((sum, it) => sum + it * it, 0) / n)).toBeCloseTo(rms, 2)
  // "mean ΔE ≈ 2.26 × per-axis SD": domain, section 4
  expect(floor / 0.2).toBeCloseTo(2.26, 2)
})

test('the same seed gives the same shares', () => {
  const truth = { reference: 1, extras: [0.5], sd: 0.4, noiseSd: 0.1 }
  const shares = (seed: number) => powerOfPlan({ looks: [4], margin: 1 }, truth, { trials: 1000, seed })
  expect(shares(4)).toEqual(shares(4))
  expect(() => powerOfPlan({ looks: [], margin: 1 }, truth)).toThrow(RangeError)
  expect(() => powerOfPlan({ looks: [4, 4], margin: 1 }, truth)).toThrow(RangeError)
})
