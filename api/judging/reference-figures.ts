import { netOfNoise } from '#api/science/fastness/net-of-noise.ts'
import { resultsAt, resultsByLevel } from '#api/science/verdicts/results-by-level.ts'
import type { ComparedRow } from './compared-row.ts'
import type { Noise } from './noise.ts'

/**
 * What the reference itself came to, in the unit of the outcome: mean and worst over its blocks, net of the measuring
 * error where it is known, and the mean as it was read. “35 is as good as 75” says nothing of whether 75 is fast.
 *
 * @example
 * referenceFigures([{ level: '75', block: 'Mon', vessel: 'a', value: 0.5 }], '75', { rms: 0.3 }) // { referenceMean: 0.4, referenceWorst: 0.4, referenceRawMean: 0.5 }
 */
export function referenceFigures(
  rows: readonly ComparedRow[],
  reference: string,
  noise: Pick<Noise, 'rms'> | undefined,
  sign: 1 | -1 = 1,
): Readonly<Record<'referenceMean' | 'referenceWorst' | 'referenceRawMean', number | null>> {
  const own = rows.filter((it) => it.level === reference)
  const blocks = (change: (value: number) => number) => [
    ...resultsAt(resultsByLevel(own, change), reference).blocks.values(),
  ]
  const raw = blocks((value) => value)
  const net = noise ? blocks((value) => netOfNoise(value, noise.rms)) : raw
  if (raw.length === 0) return { referenceMean: null, referenceWorst: null, referenceRawMean: null }
  return {
    referenceMean: meanOf(net),
    referenceWorst: sign === 1 ? Math.max(...net) : Math.min(...net),
    referenceRawMean: meanOf(raw),
  }
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, it) => sum + it, 0) / values.length
}
