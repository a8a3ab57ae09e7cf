import type { Finding, LevelFinding } from '#api/contract/finding.ts'
import { chiSquaredQuantile } from '#api/science/statistics/chi-squared.ts'
import { studentTQuantile } from '#api/science/statistics/student-t.ts'
import type { TriedPlanSent } from '#web/api/plans.ts'

export type PlansInQuestion = {
  readonly now: TriedPlanSent
  readonly later: TriedPlanSent
  readonly more: number
}

type Verdict = NonNullable<Finding['verdict']>

export type InQuestion = {
  readonly verdict: Pick<Verdict, 'sessionsMore' | 'sessionsIn' | 'subjectId' | 'estimate'> | null
  readonly levels: readonly Pick<LevelFinding, 'id' | 'skeins' | 'vessels' | 'sessions'>[]
  readonly noise: Pick<NonNullable<Finding['noise']>, 'floor'> | null
}

/** The most sessions that a plan may have, and the invented trials that tell its chance to about one in a hundred. */
const mostSessions = 50
const inventedTrials = 4000

/** From so many sessions on the spread is taken from what was seen, by its upper 80 % limit, as the count of sessions is. */
const enoughForSpread = 4

/**
 * The plan as it stands and with the sessions that would settle it, to be tried alike; undefined where sessions settle
 * nothing or nobody knows how many.
 *
 * @example
 * const verdict = { sessionsMore: 2, sessionsIn: 2, subjectId: 'a', estimate: { lower: -2.85, upper: 2.13, confidence: 0.9, margin: 1 } }
 * plansInQuestion({ verdict, levels: [{ id: 'a', skeins: 2, vessels: 2, sessions: 2 }], noise: null }).later // { sessions: 4, vesselsPerLevel: 1, skeinsPerVessel: 1, margin: 1 }
 */
export function plansInQuestion({ verdict, levels, noise }: InQuestion): PlansInQuestion | undefined {
  const more = verdict?.sessionsMore ?? null
  const estimate = verdict?.estimate ?? null
  const level = levels.find(({ id }) => id === verdict?.subjectId)
  if (!verdict || more === null || more < 1 || estimate === null || level === undefined) return undefined
  const sessions = verdict.sessionsIn + more
  if (verdict.sessionsIn < 2 || sessions > mostSessions) return undefined
  const confidence = (1 + estimate.confidence) / 2
  const n = level.sessions
  const half = (estimate.upper - estimate.lower) / 2
  const common = {
    vesselsPerLevel: Math.max(1, Math.round(level.vessels / n)),
    skeinsPerVessel: Math.max(1, Math.round(level.skeins / Math.max(1, level.vessels))),
    margin: estimate.margin,
    confidence,
    seed: 1,
    trials: inventedTrials,
    ...(noise === null ? {} : { noise: noise.floor }),
    ...(n >= enoughForSpread ? { sdOfDifferences: upperSpread(half, n, confidence) } : {}),
  }
  return {
    now: { sessions: verdict.sessionsIn, ...common },
    later: { sessions, ...common },
    more,
  }
}

/** The upper 80 % limit of the SD of n differences, whose interval reaches so far to either side. */
function upperSpread(half: number, n: number, confidence: number): number {
  const sd = (half * Math.sqrt(n)) / studentTQuantile(confidence, n - 1)
  return sd * Math.sqrt((n - 1) / chiSquaredQuantile(0.2, n - 1))
}
