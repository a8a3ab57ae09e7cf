import type { Verdict } from '#api/science/verdicts/verdict.ts'

/** Fewer blocks than this never make a claim. */
const fewest = 3

export type GainKnown = {
  /** The limits that decide, in the unit of the outcome; undefined where there are none. */
  readonly deciding: { readonly lower: number; readonly upper: number } | undefined
  /** Least gain worth having, 0 or more. */
  readonly least: number
  /** Blocks that hold both. */
  readonly n: number
  /** Units of the arm or of the control in the whole trial, whichever are fewer. */
  readonly units: number
  /** Results that are not in, though nothing was lost. */
  readonly missing: number
  readonly noiseStops: boolean
}

export type GainVerdict = {
  readonly answer: Verdict
  readonly because:
    | 'better'
    | 'worse'
    | 'no better'
    | 'one unit'
    | 'no limits'
    | 'few blocks'
    | 'missing'
    | 'noise'
    | 'limit'
}

/**
 * Is it better? It is when the lower limit of the gain is above the least gain worth having; it is not when the upper
 * limit is below it. Where any gain will do, “not” is only said of what is worse. What stops a claim never makes a “not better”.
 *
 * @example
 * betterVerdict({ deciding: { lower: 6.3, upper: 9.3 }, least: 2, n: 8, units: 8, missing: 0, noiseStops: false }) // { answer: 'holds', because: 'better' }
 */
export function betterVerdict({ deciding, least, n, units, missing, noiseStops }: GainKnown): GainVerdict {
  const open = (because: GainVerdict['because']): GainVerdict => ({ answer: 'not-settled', because })
  if (units === 1) return open('one unit')
  if (!deciding) return open(n < fewest ? 'few blocks' : 'no limits')
  const { lower, upper } = deciding
  if (upper < 0) return { answer: 'does-not-hold', because: 'worse' }
  if (upper < least) return { answer: 'does-not-hold', because: 'no better' }
  if (!(lower > least)) return open('limit')
  if (n < fewest) return open('few blocks')
  if (missing > 0) return open('missing')
  if (noiseStops) return open('noise')
  return { answer: 'holds', because: 'better' }
}
