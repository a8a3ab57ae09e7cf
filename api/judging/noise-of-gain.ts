import { figure, margin } from '#api/words/numbers.ts'
import type { Noise } from './noise.ts'

/** Fewer degrees of freedom than these do not know an error that is large beside what is asked. */
const enoughDf = 6

/**
 * Why the measuring error stops a “better”, or nothing. It is held against the least gain that was asked for; where any
 * gain will do, against the gain that was found.
 *
 * @param asked  Above 0, in the unit of the error.
 *
 * @example
 * noiseStopsGain({ kind: 'twins', floor: 0.6, df: 12 }, 1) // 'Measuring alone shows about 0.60, more than half of 1.0.'
 */
export function noiseStopsGain(
  noise: Pick<Noise, 'kind' | 'floor' | 'df'>,
  asked: number,
): string | undefined {
  const { kind, floor, df } = noise
  if (kind === 'planning')
    return 'The measuring error is only assumed: measure an unchanged skein again on another day.'
  if (floor > asked / 2)
    return `Measuring alone shows about ${figure(floor)}, more than half of ${margin(Number(asked.toFixed(2)))}.`
  if (df !== undefined && df < enoughDf && floor > asked / 3)
    return 'The measuring error is too little known for this: measure two unchanged skeins again.'
  return undefined
}
