import { figure, margin } from '#api/words/numbers.ts'
import type { Noise } from './noise.ts'

/** Fewer degrees of freedom than these do not know an error that is large beside what is asked. */
const enoughDf = 6

/**
 * Why the measuring error stops a claim about colours that were read, or nothing: it must be known, and small beside what
 * is asked of them.
 *
 * @param asked  The least gain, or the tolerance; above 0, in ΔE00.
 *
 * @example
 * noiseDoubt({ kind: 'twins', floor: 0.6, df: 12 }, 1) // 'Measuring alone shows about 0.60, more than half of 1.0.'
 */
export function noiseDoubt(
  noise: Pick<Noise, 'kind' | 'floor' | 'df'> | undefined,
  asked: number,
): string | undefined {
  if (!noise) return 'The measuring error is not known: measure an unchanged skein again on another day.'
  const { kind, floor, df } = noise
  if (kind === 'planning')
    return 'The measuring error is only assumed: measure an unchanged skein again on another day.'
  if (floor > asked / 2)
    return `Measuring alone shows about ${figure(floor)}, more than half of ${margin(Number(asked.toFixed(2)))}.`
  if (df !== undefined && df < enoughDf && floor > asked / 3)
    return 'The measuring error is too little known for this: measure two unchanged skeins again.'
  return undefined
}
