import { withoutLimits } from './extra-loss.ts'
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
 */
export function modelExtraLosses(
  results: ReadonlyMap<string, LevelResults>,
  reference: Level,
  _options: { readonly confidence: number; readonly sign?: 1 | -1 },
): ModelOfLevels {
  const against = resultsAt(results, reference)
  return {
    cautions: [],
    at: (level) => {
      const own = resultsAt(results, level)
      const both = [...own.blocks.keys()].filter((block) => against.blocks.has(block)).length
      return withoutLimits({ n: both }, 'The model with sessions kept in is not at hand yet.')
    },
  }
}
