import type { Verdict } from '#api/science/verdicts/verdict.ts'
import type { Deciding } from './deciding-interval.ts'

/** Fewer blocks, lots or units than this never make a claim. */
export const fewestBlocks = 3

/** What decided, or what stood in the way. */
export type Because =
  | 'one unit'
  | 'no pair'
  | 'no spread'
  | 'no limits'
  | 'over the margin'
  | 'few blocks'
  | 'blank'
  | 'limit'
  | 'noise'
  | 'under the margin'

export type NoWorseVerdict = { readonly answer: Verdict; readonly because: Because }

export type DifferenceKnown = {
  readonly compared: Deciding
  /** Largest extra that is still accepted, in the unit of the values; more than 0. */
  readonly margin: number
  /** Units with a result in the whole trial, of the level and of the reference: the fewer of the two. */
  readonly fewestUnits: number
  /** Skeins of either that have no result and are not lost. */
  readonly blank: number
  /** The measuring error stands in the way of holding. */
  readonly noiseStops: boolean
}

/**
 * Is a level no worse than the reference by more than the margin? Holds when the upper deciding limit lies under it,
 * does not hold when the lower lies over it.
 *
 * @throws RangeError for a margin that is not above 0
 *
 * @example
 * const compared = { raw: { n: 4, noSpread: false }, interval: { lower: -0.5, upper: 0.55 } }
 * noWorse({ compared, margin: 1, fewestUnits: 4, blank: 0, noiseStops: false }) // { answer: 'holds', because: 'under the margin' }
 */
export function noWorse({
  compared,
  margin,
  fewestUnits,
  blank,
  noiseStops,
}: DifferenceKnown): NoWorseVerdict {
  if (!(margin > 0)) throw new RangeError('The margin is more than 0.')
  const { raw, interval } = compared
  const open = (because: Because): NoWorseVerdict => ({ answer: 'not-settled', because })
  if (raw.n === 0) return open('no pair')
  if (fewestUnits < 2) return open('one unit')
  if (raw.noSpread) return open('no spread')
  if (!interval) return open(raw.n < fewestBlocks ? 'few blocks' : 'no limits')
  if (interval.lower > margin) return { answer: 'does-not-hold', because: 'over the margin' }
  if (raw.n < fewestBlocks) return open('few blocks')
  if (blank > 0) return open('blank')
  if (!(interval.upper < margin)) return open('limit')
  if (noiseStops) return open('noise')
  return { answer: 'holds', because: 'under the margin' }
}
