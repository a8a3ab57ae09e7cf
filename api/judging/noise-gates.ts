import { figure, margin as marginFigure } from '#api/words/numbers.ts'
import type { Noise } from './noise.ts'

/** Above this share of the margin the floor must be known with six degrees of freedom; above the other nothing holds. */
const shares = { doubtful: 1 / 3, blind: 1 / 2 } as const
const enoughDf = 6

/**
 * Why the measuring error keeps a measured condition from holding, as a sentence; undefined where it does not.
 *
 * @param margin  Largest difference that is still accepted, in ΔE00.
 *
 * @example
 * noiseStops({ kind: 'twins', floor: 0.4, df: 3 }, 1) // 'The measuring error (0.40) is not known well enough for a margin of 1.0: read two twins again on another day, then it can be.'
 */
export function noiseStops(
  noise: Pick<Noise, 'kind' | 'floor' | 'df'> | undefined,
  margin: number,
): string | undefined {
  if (!noise) return 'The measuring error is not known: read a twin again on another day.'
  if (noise.kind === 'planning')
    return 'The measuring error is only assumed: read a twin again on another day.'
  const floor = figure(noise.floor)
  if (noise.floor > shares.blind * margin)
    return `The measuring error (${floor}) is more than half of what you allowed (${marginFigure(margin)}), so nothing can be shown to be as good.`
  if (noise.floor > shares.doubtful * margin && (noise.df === undefined || noise.df < enoughDf))
    return `The measuring error (${floor}) is not known well enough for a margin of ${marginFigure(margin)}: read two twins again on another day, then it can be.`
  return undefined
}
