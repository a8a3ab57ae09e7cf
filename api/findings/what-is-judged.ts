import { Problem } from '#api/contract/problem.ts'
import type { RuleCondition } from '#db/tables.ts'
import type { ResultSeen } from '#db/trial-record.ts'
import type { FactorWithLevels, RuleRow } from '#db/trials.ts'
import type { LevelOfOther } from './level-of-other.ts'

/** The factor that the finding is about: the ordered one where several are varied, else the first. */
export function mainFactor(
  factors: readonly FactorWithLevels[],
  rule: RuleRow | undefined,
): FactorWithLevels | undefined {
  if (rule?.conditions.some((condition) => condition.statistic === 'worst lot')) return factors[0]
  return factors.find((factor) => factor.ordered && factor.levels.length > 1) ?? factors[0]
}

/**
 * The other factor that splits the trial, and the level of it that the finding is within: the one asked for, else the first.
 *
 * @param at  Where the level was asked for, for a refusal.
 */
export function withinOf(
  factors: readonly FactorWithLevels[],
  main: FactorWithLevels | undefined,
  { asked, at = '#/query/within' }: { readonly asked: string | undefined; readonly at?: string | undefined },
): LevelOfOther | undefined {
  const others = factors.filter((factor) => factor !== main && factor.levels.length > 0)
  const [other] = others
  if (!other) {
    if (asked) throw new Problem('not-found', 'This trial has no second factor to look within.')
    return undefined
  }
  const level = asked === undefined ? other.levels[0] : other.levels.find((it) => it.id === asked)
  if (!level)
    throw new Problem('not-found', 'The other factor of this trial has no such level.', [
      { pointer: at, detail: `One of ${other.levels.map((it) => it.id).join(', ')}.` },
    ])
  return { factor: other, level }
}

/** The condition that decides: the margin, else whatever else than a side limit the rule names first. */
export function mainCondition(rule: RuleRow | undefined): RuleCondition | undefined {
  const conditions = rule?.conditions ?? []
  return (
    conditions.find((it) => it.statistic === 'upper limit') ??
    conditions.find((it) => it.statistic !== 'every unit') ??
    conditions[0]
  )
}

/** Which outcome a picture shows while no rule names one. */
const tellsMost = [
  'dE00',
  'spread',
  'light rating',
  'dye left',
  'staining dE76',
  'staining',
  'change grade',
  'lightness',
]

/** Without a rule the pictures still show something: the loss at the furthest wear that was read, else what tells most. */
export function plainCondition(results: readonly ResultSeen[]): RuleCondition | undefined {
  const rank = ({ kind }: ResultSeen) =>
    tellsMost.includes(kind) ? tellsMost.indexOf(kind) : tellsMost.length
  const [some] = results
    .filter((result) => result.kind !== 'dE00' || result.wearKey !== '')
    .sort((a, b) => rank(a) - rank(b) || (b.wearAmount ?? 0) - (a.wearAmount ?? 0))
  if (!some) return undefined
  return {
    outcome: some.kind,
    wear: some.wear,
    end: 'low',
    against: 'reference',
    statistic: 'mean',
    direction: 'smaller is better',
  }
}
