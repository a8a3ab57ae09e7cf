import { claim } from '#api/judging/claim.ts'
import { seededRandom } from '#api/science/design/seeded-random.ts'
import type { RuleCondition } from '#db/tables.ts'
import type { RuleRow } from '#db/trials.ts'
import { madeTrial, type World } from './made-trial.ts'

export type ClaimCell = World & {
  /** How often the claim holds. */
  readonly holds: number
}

const axes = { equal: [1, 1, 1], unequal: [1, 0.3, 0.3] } as const

/** The boundary: the true extra loss is the margin, so every “holds” is false; and one world in which it should hold. */
export const worlds: readonly World[] = [
  ...[1 / 3, 1 / 2].flatMap((floor) =>
    [4, 6].flatMap((sessions) =>
      (
        [
          [1, 4],
          [1, 6],
          [2, 4],
          [4, 4],
        ] as const
      ).map(
        ([twins, reread]): World => ({
          sessions,
          floor,
          axes: axes.equal,
          sharedShift: false,
          beside: true,
          twins,
          reread,
          extra: 1,
        }),
      ),
    ),
  ),
  ...[1 / 3, 1 / 2].flatMap((floor) => [
    {
      sessions: 4,
      floor,
      axes: axes.unequal,
      sharedShift: false,
      beside: true,
      twins: 2,
      reread: 4,
      extra: 1,
    },
    { sessions: 6, floor, axes: axes.equal, sharedShift: true, beside: true, twins: 2, reread: 4, extra: 1 },
    { sessions: 6, floor, axes: axes.equal, sharedShift: true, beside: false, twins: 4, reread: 4, extra: 1 },
    { sessions: 6, floor, axes: axes.equal, sharedShift: true, beside: true, twins: 4, reread: 4, extra: 1 },
  ]),
  {
    sessions: 4,
    floor: 1 / 5,
    axes: axes.equal,
    sharedShift: false,
    beside: true,
    twins: 2,
    reread: 4,
    extra: 0,
  },
]

/** How often `claim()` itself says “holds” over made-up trials of each world. */
export function claimsStudy(trials: number, seed: number, of: readonly World[] = worlds): ClaimCell[] {
  return of.map((world) => {
    const random = seededRandom(`${seed} claims ${JSON.stringify(world)}`)
    let holds = 0
    for (let trial = 0; trial < trials; trial++)
      if (claim(madeTrial(world, random), ruleOf(world))?.answer === 'holds') holds++
    return { ...world, holds: holds / trials }
  })
}

/** What a boundary cell may be wrong at most: 5 % up to a floor of a third of the margin, 6 % up to half, and two standard errors. */
export function mostFalse({ floor }: World, trials: number): number {
  const share = floor <= 1 / 3 ? 0.05 : 0.06
  return share + 2 * Math.sqrt((share * (1 - share)) / trials)
}

const noWorse: RuleCondition = {
  outcome: 'dE00',
  wear: { W2: 3 },
  end: 'low',
  against: 'reference',
  question: 'no-worse',
  margin: 1,
  direction: 'smaller is better',
}

function ruleOf({ sessions }: World): RuleRow {
  return {
    id: '#rule',
    version: 1,
    createdAt: new Date('2026-02-01T08:00:00Z'),
    trialId: '#trial',
    edition: 1,
    conditions: [noWorse],
    method: 'paired',
    plannedSessions: sessions,
    looks: 1,
    confidence: 0.95,
    lockedAt: new Date('2026-02-02T08:00:00Z'),
    reason: null,
  }
}
