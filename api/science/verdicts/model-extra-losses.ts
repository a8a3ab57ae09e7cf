import { modelOfBlocks } from '../statistics/model-of-blocks.ts'
import { extraLoss, withoutLimits } from './extra-loss.ts'
import type { ExtraLoss, Level } from './level-rows.ts'
import { type LevelResults, resultsAt } from './results-by-level.ts'

/** The extra losses of all levels by the model with sessions kept in, and what it has to warn of. */
export type ModelOfLevels = {
  readonly at: (level: Level) => ExtraLoss
  readonly cautions: readonly string[]
}

/**
 * Every level's extra loss over the reference by one model of all rows: level fixed, session random, and vessel
 * where one vessel holds several rows. It uses incomplete sessions too, and takes one spread for all levels.
 *
 * @example
 * const results = new Map([['20', [3, 5, 7]], ['75', [2, 3, 6]]].map(([level, values]) => [level, { vessels: values.map((value, i) => ({ block: String(i), value })), blocks: new Map(values.map((value, i) => [String(i), value])), units: values }]))
 * modelExtraLosses(results, 75, { confidence: 0.95 }).at(20) // { n: 3, mean: 5, extra: 1.3333, se: 0.3333, df: 2, upper: 2.3067 }
 */
export function modelExtraLosses(
  results: ReadonlyMap<string, LevelResults>,
  reference: Level,
  { confidence, sign = 1 }: { readonly confidence: number; readonly sign?: 1 | -1 },
): ModelOfLevels {
  const rows = [...results].flatMap(([level, it]) =>
    it.vessels.map(({ block = '', vessel, value }) => ({
      level,
      block,
      value,
      ...(vessel === undefined ? {} : { vessel }),
    })),
  )
  const against = resultsAt(results, reference)
  const model = rows.every((row) => Number.isFinite(row.value))
    ? modelOfBlocks(rows, { reference: String(reference) })
    : { unavailable: 'The figures are too large to be reckoned with.' }
  return {
    cautions: 'unavailable' in model ? [] : model.cautions,
    at: (level) => {
      const own = resultsAt(results, level)
      const both = [...own.blocks.keys()].filter((block) => against.blocks.has(block)).length
      if (own.blocks.size === 0) return withoutLimits({ n: 0 }, 'No session has a result of this level.')
      const mean = [...own.blocks.values()].reduce((sum, value) => sum + value, 0) / own.blocks.size
      if ('unavailable' in model) return withoutLimits({ n: both, mean }, model.unavailable)
      const difference = model.differences.get(String(level))
      if (difference === undefined)
        return withoutLimits({ n: both, mean }, 'The model cannot tell this level from the others.')
      const { se, df } = difference
      const extra = sign * difference.extra
      if (!(se > 0))
        return withoutLimits(
          { n: both, mean, extra },
          'The values have no spread at all: were they copied or rounded?',
          { noSpread: true },
        )
      return extraLoss({ n: both, mean, extra, se, df, sd: se * Math.sqrt(Math.max(1, both)) }, confidence)
    },
  }
}
