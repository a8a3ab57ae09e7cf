import { noiseShares } from '#api/science/design/noise-shares.ts'
import { quickLadder } from '#api/science/design/quick-ladder.ts'
import { type SeededRandom, seededRandom } from '#api/science/design/seeded-random.ts'
import { noiseOfSd, simulatedLosses } from '#api/science/design/simulated-losses.ts'
import type { Verdict } from '#api/science/verdicts/verdict.ts'

/** The worlds that the rule is tried in; lengths in margins. */
export const grid = {
  sessions: [3, 4, 6, 8],
  extra: [0, 0.5, 1, 2],
  floor: [0, 1 / 5, 1 / 3, 1 / 2],
  referenceLoss: [0, 0.5, 1],
  lost: [0, 0.1],
} as const

/** SD between packets, as a share of the true loss: what loses nothing does not vary, and what loses more varies more. */
export const packetSpread = 0.25

export type Cell = {
  readonly sessions: number
  readonly extra: number
  readonly floor: number
  readonly referenceLoss: number
  readonly lost: number
  /** Share that holds by the rule: raw and net of noise, looked at once. */
  readonly rule: number
  /** The same when the noise is not known but found from four twins of the trial, read again once each. */
  readonly fourTwins: number
  /** Share that holds by raw losses alone. */
  readonly raw: number
  /** Share that holds by the rule when it is looked at after every session from the third on, each time at 95 %. */
  readonly everySession: number
}

/**
 * How often a level holds, over the whole grid. Every world is made up once with the most sessions; its first 3, 4 …
 * are a trial of 3, 4 … sessions, so that the columns can be compared.
 */
export function gridStudy(trials: number, seed: number): Cell[] {
  const cells: Cell[] = []
  for (const lost of grid.lost)
    for (const referenceLoss of grid.referenceLoss)
      for (const floor of grid.floor)
        for (const extra of grid.extra)
          cells.push(...world({ lost, referenceLoss, floor, extra }, trials, seed))
  return cells
}

type World = Pick<Cell, 'lost' | 'referenceLoss' | 'floor' | 'extra'>

function world(it: World, trials: number, seed: number): Cell[] {
  const most = Math.max(...grid.sessions)
  const noiseSd = it.floor / noiseOfSd(1).floor
  const truth = {
    reference: it.referenceLoss,
    extras: [it.extra],
    sd: (loss: number) => packetSpread * loss,
    noiseSd,
    lost: it.lost,
  }
  const rule = { levels: 1, plannedSessions: most, margin: 1, confidence: 0.95 }
  const judge = quickLadder({
    ...rule,
    noiseRms: noiseSd === 0 ? undefined : noiseOfSd(noiseSd).rms,
    cannotSeeMargin: it.floor > noiseShares.blind,
  })
  const rawJudge = quickLadder(rule)
  const random = seededRandom(`${seed} ${JSON.stringify(it)}`)
  const values = new Float64Array(2 * most)
  const answers: Verdict[] = []
  const zero = (): Map<number, number> => new Map(grid.sessions.map((sessions) => [sessions, 0]))
  const [byRule, byTwins, byRaw, byLooking] = [zero(), zero(), zero(), zero()]
  const count = (of: Map<number, number>, sessions: number): void => {
    of.set(sessions, (of.get(sessions) ?? 0) + 1)
  }
  for (let trial = 0; trial < trials; trial++) {
    simulatedLosses(truth, { sessions: most, random, into: values })
    const twins = noiseSd === 0 ? undefined : rmsOfTwins(noiseSd, random)
    let settled: Verdict = 'not-settled'
    for (let sessions = 3; sessions <= most; sessions++) {
      judge.judge(values, sessions, answers)
      const answer = answers[0] ?? 'not-settled'
      if (settled === 'not-settled') settled = answer
      if (!byRule.has(sessions)) continue
      if (answer === 'holds') count(byRule, sessions)
      if (settled === 'holds') count(byLooking, sessions)
      judge.judge(values, sessions, answers, twins)
      if (answers[0] === 'holds') count(byTwins, sessions)
      rawJudge.judge(values, sessions, answers)
      if (answers[0] === 'holds') count(byRaw, sessions)
    }
  }
  return grid.sessions.map((sessions) => ({
    sessions,
    ...it,
    rule: (byRule.get(sessions) ?? 0) / trials,
    fourTwins: (byTwins.get(sessions) ?? 0) / trials,
    raw: (byRaw.get(sessions) ?? 0) / trials,
    everySession: (byLooking.get(sessions) ?? 0) / trials,
  }))
}

/** Root mean square of four unchanged twins, each read before and after. */
function rmsOfTwins(noiseSd: number, random: SeededRandom): number {
  let squares = 0
  for (let axis = 0; axis < 12; axis++) squares += (noiseSd * Math.SQRT2 * random.normal()) ** 2
  return Math.sqrt(squares / 4)
}
