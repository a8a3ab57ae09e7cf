import type { TrialRecord } from '#db/trial-record.ts'
import type { FactorWithLevels, LevelRow } from '#db/trials.ts'
import type { Condition } from './condition.ts'

/** A combination of the levels of everything else that was varied. A trial that varies one thing has one, without parts. */
export type Stratum = {
  /** The ids of its levels, in the order of the factors: “” for the one of a trial that varies one thing. */
  readonly key: string
  readonly parts: readonly { readonly factor: FactorWithLevels; readonly level: LevelRow }[]
}

/**
 * The factor whose levels are held against each other: the ordered one with levels to compare, else the first with a
 * chosen reference, else the first. Claims by lot are about the first factor.
 */
export function mainFactor(
  factors: readonly FactorWithLevels[],
  conditions: readonly Condition[],
): FactorWithLevels | undefined {
  if (conditions.some((it) => it.byLot)) return factors[0]
  return (
    factors.find((factor) => factor.ordered && factor.levels.length > 1) ??
    factors.find((factor) => factor.levels.some((level) => level.isReference)) ??
    factors[0]
  )
}

/**
 * Every combination of the other factors’ levels, in their order.
 *
 * @example
 * strataOf([], undefined) // [{ key: '', parts: [] }]
 */
export function strataOf(
  factors: TrialRecord['factors'],
  main: FactorWithLevels | undefined,
): readonly Stratum[] {
  let strata: Stratum[] = [{ key: '', parts: [] }]
  for (const factor of factors) {
    if (factor === main || factor.levels.length === 0) continue
    strata = strata.flatMap(({ parts }) =>
      factor.levels.map((level) => {
        const all = [...parts, { factor, level }]
        return { key: all.map((part) => part.level.id).join('+'), parts: all }
      }),
    )
  }
  return strata
}
