import { allEqual, extraLoss, withoutLimits } from './extra-loss.ts'
import type { ExtraLoss } from './level-rows.ts'
import type { LevelResults } from './results-by-level.ts'

/** Spread that all levels are taken to share, from the units within levels. */
export type CommonSpread = { readonly sd: number; readonly df: number; readonly none: boolean }

/**
 * The spread within levels, pooled over all of them as in a one-way analysis of variance.
 *
 * @example
 * commonSpread([[1, 3], [2, 4]]).sd // 1.4142136
 */
export function commonSpread(levels: readonly (readonly number[])[]): CommonSpread {
  let squares = 0
  let df = 0
  let none = true
  for (const units of levels) {
    if (units.length === 0) continue
    const mean = meanOf(units)
    for (const unit of units) squares += (unit - mean) ** 2
    df += units.length - 1
    none &&= allEqual(units, Math.max(...units.map(Math.abs)))
  }
  return { sd: df > 0 ? Math.sqrt(squares / df) : 0, df, none }
}

/**
 * A level's extra loss over the reference without blocks: independent units, one spread for all levels.
 *
 * @example
 * const level = { vessels: [], blocks: new Map(), units: [2, 4] }
 * const reference = { vessels: [], blocks: new Map(), units: [1, 3] }
 * pooledExtraLoss(level, reference, { confidence: 0.95, spread: { sd: 1, df: 2, none: false } }) // { n: 2, mean: 3, extra: 1, se: 1, df: 2, upper: 3.92 }
 */
export function pooledExtraLoss(
  level: LevelResults,
  reference: LevelResults,
  { confidence, spread, sign = 1 }: { confidence: number; spread: CommonSpread; sign?: 1 | -1 },
): ExtraLoss {
  const n = level.units.length
  if (n === 0) return withoutLimits({ n }, 'No unit of this level has a result.')
  const mean = meanOf(level.units)
  if (reference.units.length === 0)
    return withoutLimits({ n, mean }, 'No unit of the reference has a result.')
  const extra = sign * (mean - meanOf(reference.units))
  if (spread.df === 0)
    return withoutLimits({ n, mean, extra }, 'One unit of each level has no spread to judge by.')
  if (spread.none)
    return withoutLimits(
      { n, mean, extra },
      'All units of a level are equal: were values copied or rounded?',
      {
        noSpread: true,
      },
    )
  const se = spread.sd * Math.sqrt(1 / n + 1 / reference.units.length)
  return extraLoss({ n, mean, extra, se, df: spread.df, sd: spread.sd }, confidence)
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}
