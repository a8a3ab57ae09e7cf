import { setImmediate as nextTurn } from 'node:timers/promises'
import { powerOfPlan } from '#api/science/design/power-of-plan.ts'

export type PlanInQuestion = {
  readonly sessions: number
  readonly vesselsPerLevel: number
  readonly margin: number
  readonly confidence: number
  /** SD of the differences between two vessels of one session. */
  readonly sdOfDifferences: number
  /** Mean difference between readings of an unchanged skein. */
  readonly noise: number
  readonly seed: number
  readonly trials: number
}

export type TriedSessions = {
  readonly sessions: number
  readonly saysHolds: number
  readonly saysWrongly: number
}

/** So many sessions are made up in one go; then other requests have their turn. */
const atOnce = 40_000

/**
 * How often the plan says “holds” when the level truly is as good as the reference, and when it truly loses a full
 * margin more: for the planned number of sessions and its neighbours.
 *
 * The reference is taken to lose as much as the margin; vessels of one level in one session are averaged.
 */
export async function tryPlan(plan: PlanInQuestion): Promise<TriedSessions[]> {
  const tried: TriedSessions[] = []
  for (const sessions of neighbours(plan.sessions)) {
    tried.push({
      sessions,
      saysHolds: await shareThatHolds(plan, { sessions, extra: 0 }),
      saysWrongly: await shareThatHolds(plan, { sessions, extra: plan.margin }),
    })
  }
  return tried
}

/**
 * Four numbers of sessions to compare, the planned one among them, from 2.
 *
 * @example
 * [neighbours(2), neighbours(4), neighbours(6)] // [[2, 3, 4, 5], [2, 3, 4, 5], [4, 5, 6, 7]]
 */
export function neighbours(sessions: number): number[] {
  const first = Math.max(2, sessions - 2)
  return [first, first + 1, first + 2, first + 3]
}

async function shareThatHolds(
  plan: PlanInQuestion,
  { sessions, extra }: { readonly sessions: number; readonly extra: number },
): Promise<number> {
  const chunk = Math.max(200, Math.floor(atOnce / sessions))
  let held = 0
  for (let from = 0; from < plan.trials; from += chunk) {
    const trials = Math.min(chunk, plan.trials - from)
    const { holds } = powerOfPlan(
      { looks: [sessions], margin: plan.margin, confidence: plan.confidence },
      {
        reference: plan.margin,
        extras: [extra],
        sd: plan.sdOfDifferences / Math.SQRT2 / Math.sqrt(plan.vesselsPerLevel),
        noiseSd: sdOfFloor(plan.noise) / Math.sqrt(plan.vesselsPerLevel),
      },
      { trials, seed: `${plan.seed}/${sessions}/${extra}/${from}` },
    )
    held += (holds[0] ?? 0) * trials
    await nextTurn()
  }
  return held / plan.trials
}

/**
 * The SD of one reading on each axis, from the mean difference between two readings of an unchanged skein: that
 * difference is √2 times the length of three normal axes, whose mean is 2·√(2/π) SD (Maxwell).
 *
 * @example
 * sdOfFloor(2.2568) // 1
 */
export function sdOfFloor(floor: number): number {
  return (floor * Math.sqrt(Math.PI)) / 4
}
