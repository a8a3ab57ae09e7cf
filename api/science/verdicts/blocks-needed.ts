import { mostRuns, runsNeeded } from '../design/runs-needed.ts'
import { chiSquaredQuantile } from '../statistics/chi-squared.ts'
import type { ExtraLoss, Needed } from './level-rows.ts'

/** From so many blocks on the spread is taken from the data; with fewer it is hardly known. */
const enoughToKnowSpread = 4

/**
 * How many sessions in all would probably settle a level: 80 % power, if the extra loss is truly what was seen.
 *
 * The spread is the upper 80 % limit of what was seen, since with few sessions the estimate itself may be far too
 * small; below 4 sessions that limit is 2 to 4 times the estimate, so the spread that was planned for is used instead.
 *
 * @param seen    What was seen; `pooled` when its `sd` is that of single units and its blocks are units of a level.
 * @param margin  Largest extra loss that is still accepted.
 *
 * @example
 * blocksNeeded({ n: 4, mean: 1, extra: 0.5, sd: 0.5, df: 3, se: 0.25, lower: 0, upper: 1.1, noSpread: false }, { margin: 1, confidence: 0.95 }) // { blocks: 20 }
 */
export function blocksNeeded(
  seen: Pick<ExtraLoss, 'n' | 'extra' | 'sd' | 'df' | 'noSpread'>,
  {
    margin,
    confidence,
    sdPlanned,
    pooled = false,
  }: {
    readonly margin: number
    readonly confidence: number
    readonly sdPlanned?: number | undefined
    readonly pooled?: boolean
  },
): Needed {
  if (seen.extra === undefined)
    return { unavailable: 'No session shows this level beside the reference yet.' }
  const distance = margin - Math.max(0, seen.extra)
  if (!(distance > 1e-9 * margin))
    return {
      unavailable:
        'The extra loss that was seen is at the margin or over it: more sessions will hardly help.',
    }
  if (seen.noSpread)
    return { unavailable: 'No spread was seen at all, so the sessions cannot be counted ahead.' }
  const sd = seen.n >= enoughToKnowSpread ? upperSpread(seen) : sdPlanned
  if (sd === undefined || !(sd > 0))
    return {
      unavailable: 'With so few sessions the spread is hardly known; give the spread that you expect.',
    }
  const blocks = runsNeeded({ distance, sd, goal: 'no-worse', level: confidence, arms: pooled ? 2 : 1 })
  if (blocks === undefined) return { unavailable: `More than ${mostRuns} sessions would be needed.` }
  return { blocks }
}

/** The upper 80 % limit of an SD: s·√(df ÷ the chi-squared quantile at 0.2). */
function upperSpread({ sd, df }: Pick<ExtraLoss, 'sd' | 'df'>): number | undefined {
  if (sd === undefined || df === undefined) return undefined
  const upper = sd * Math.sqrt(df / chiSquaredQuantile(0.2, df))
  return Number.isFinite(upper) ? upper : undefined
}
