/** Up to so many blocks every pattern is counted. */
export const mostFlipped = 16

export type SignFlip = {
  /** How many patterns of signs there are: 2ⁿ. */
  readonly patterns: number
  /** Share of them in which the sum is as large as it was, or larger; as small, or smaller. */
  readonly pGreater: number
  readonly pLess: number
  /** One-sided limits of the mean that go with it; without end where no pattern is rare enough. */
  readonly lower: number
  readonly upper: number
}

/**
 * The exact test by flipping signs: were the gains as likely to be below `least` as above it, each block by itself, how
 * often would their sum be as large? Every one of the 2ⁿ patterns is counted, ties as “as large”. The limits are the
 * k-th smallest and largest mean of the 2ⁿ − 1 parts of the blocks, k = (1 − confidence)·2ⁿ rounded down (Hartigan 1969,
 * J. Am. Stat. Assoc. 64, 1303–1317). With 4 blocks or fewer p never falls below 0.05.
 *
 * @returns undefined for no blocks or more than 16.
 *
 * @example
 * signFlip([0.92, 0.31, 0.55, 1.1, 0.74], { least: 0.3, confidence: 0.95 }) // { patterns: 32, pGreater: 0.03125, pLess: 1, lower: 0.31, upper: 1.1 }
 */
export function signFlip(
  gains: readonly number[],
  { least = 0, confidence }: { readonly least?: number; readonly confidence: number },
): SignFlip | undefined {
  const n = gains.length
  if (n === 0 || n > mostFlipped) return undefined
  const patterns = 2 ** n
  const apart = gains.map((gain) => gain - least)
  const slack = 1e-9 * apart.reduce((sum, it) => sum + Math.abs(it), 0)
  const whole = apart.reduce((sum, it) => sum + it, 0)
  // The sum over the blocks of a pattern, built from the pattern without its last block.
  const kept = new Float64Array(patterns)
  const means = new Float64Array(patterns - 1)
  let [asLarge, asSmall] = [0, 0]
  for (let pattern = 0; pattern < patterns; pattern++) {
    if (pattern > 0) {
      const last = 31 - Math.clz32(pattern)
      kept[pattern] = kept[pattern - 2 ** last]! + apart[last]!
      means[pattern - 1] = kept[pattern]! / bits(pattern) + least
    }
    const sum = 2 * kept[pattern]! - whole
    if (sum >= whole - slack) asLarge++
    if (sum <= whole + slack) asSmall++
  }
  means.sort()
  const k = Math.floor((1 - confidence) * patterns + 1e-9)
  return {
    patterns,
    pGreater: asLarge / patterns,
    pLess: asSmall / patterns,
    lower: k < 1 ? Number.NEGATIVE_INFINITY : means[k - 1]!,
    upper: k < 1 ? Number.POSITIVE_INFINITY : means[means.length - k]!,
  }
}

function bits(pattern: number): number {
  let count = 0
  for (let rest = pattern; rest > 0; rest &= rest - 1) count++
  return count
}
