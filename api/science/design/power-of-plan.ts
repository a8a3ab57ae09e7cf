import type { Verdict } from '../verdicts/verdict.ts'
import { confidenceOfLook } from './confidence-of-look.ts'
import { noiseShares } from './noise-shares.ts'
import { quickLadder } from './quick-ladder.ts'
import { seededRandom } from './seeded-random.ts'
import { noiseOfSd, simulatedLosses, type TrueLosses } from './simulated-losses.ts'

export type Plan = {
  /** Sessions at which it is looked at, rising: [4], or [4, 6] with a second look when the first does not settle it. */
  readonly looks: readonly number[]
  readonly margin: number
  readonly confidence?: number
  /** Left out, the confidence of each look is that of the verdict: half the doubt at each further look. */
  readonly confidenceAt?: (look: number) => number
  /** Judge by raw losses alone, for the study of what noise does. */
  readonly rawOnly?: boolean
}

export type PlanPower = {
  /** Share of trials in which each level, from the one next to the reference downwards, holds with all above it. */
  readonly holds: readonly number[]
  /** Share of trials with each verdict in the end. */
  readonly verdicts: Readonly<Record<Verdict, number>>
  readonly trials: number
  /** The largest standard error that chance leaves in a share. */
  readonly standardError: number
}

/**
 * How often would this plan give its answers, if that were the truth? Found by making up trials and judging them as
 * a real one is judged: noise taken off, looks counted, lost skeins lost.
 *
 * @param trials  10,000 unless given: shares are then known to half a point.
 * @param seed    The same seed gives the same shares.
 * @throws RangeError for a plan without looks, or one that looks before it has begun.
 *
 * @example
 * powerOfPlan({ looks: [4], margin: 1 }, { reference: 1, extras: [3], sd: 0.3, noiseSd: 0 }, { trials: 500 }).holds // [0]
 */
export function powerOfPlan(
  plan: Plan,
  truth: TrueLosses,
  { trials = 10_000, seed = 1 }: { readonly trials?: number; readonly seed?: number | string } = {},
): PlanPower {
  const { looks, margin, confidence = 0.95 } = plan
  const sessions = looks.at(-1) ?? 0
  if (!(sessions >= 1) || looks.some((look, i) => look < 1 || look <= (looks[i - 1] ?? 0)))
    throw new RangeError('A plan is looked at after 1 session or more, each look later than the one before.')
  const levels = truth.extras.length
  const noise = noiseOfSd(truth.noiseSd)
  const ladders = looks.map((_, look) =>
    quickLadder({
      levels,
      plannedSessions: sessions,
      margin,
      confidence: plan.confidenceAt?.(look + 1) ?? confidenceOfLook(confidence, look + 1),
      noiseRms: plan.rawOnly || truth.noiseSd === 0 ? undefined : noise.rms,
      cannotSeeMargin: !plan.rawOnly && noise.floor > margin * noiseShares.blind,
    }),
  )
  const random = seededRandom(seed)
  const values = new Float64Array((levels + 1) * sessions)
  const answers: Verdict[] = []
  const holds = new Array<number>(levels).fill(0)
  const verdicts = { holds: 0, 'does-not-hold': 0, 'not-settled': 0 }
  for (let trial = 0; trial < trials; trial++) {
    simulatedLosses(truth, { sessions, random, into: values })
    for (let look = 0; look < looks.length; look++) {
      ladders[look]?.judge(values, looks[look] ?? 0, answers)
      // A verdict that is settled ends the trial; only "not settled" may be looked at again.
      if (answers[0] !== 'not-settled') break
    }
    verdicts[answers[0] ?? 'not-settled']++
    for (let level = 0; level < levels && answers[level] === 'holds'; level++)
      holds[level] = (holds[level] ?? 0) + 1
  }
  return {
    holds: holds.map((count) => count / trials),
    verdicts: {
      holds: verdicts.holds / trials,
      'does-not-hold': verdicts['does-not-hold'] / trials,
      'not-settled': verdicts['not-settled'] / trials,
    },
    trials,
    standardError: Math.sqrt(0.25 / trials),
  }
}
