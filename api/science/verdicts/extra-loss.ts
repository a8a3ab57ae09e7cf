import { studentTQuantile } from '../statistics/student-t.ts'
import type { ExtraLoss } from './level-rows.ts'

/** Differences this much smaller than the values themselves are rounding in the last digits, not spread. */
const rounding = 1e-9

const fewestDf = 0.1

/**
 * An extra loss with its one-sided limits, from an estimate, its standard error and degrees of freedom. What is
 * not finite (figures too large to reckon with) is left out.
 *
 * @example
 * extraLoss({ n: 4, mean: 1, extra: 0.02, se: 0.2, df: 3, sd: 0.4 }, 0.95).upper // 0.4907
 */
export function extraLoss(
  it: { n: number; mean: number; extra: number; se: number; df: number; sd: number },
  confidence: number,
): ExtraLoss {
  // A model may be left with next to no degrees of freedom; its limits would reach beyond all numbers.
  if (!(it.df > fewestDf)) return withoutLimits(it, 'The spread is too little known to set limits by.')
  const half = it.se * studentTQuantile(confidence, it.df)
  const [lower, upper] = [it.extra - half, it.extra + half]
  if (!Number.isFinite(lower) || !Number.isFinite(upper))
    return withoutLimits(it, 'The figures are too large to be reckoned with.')
  return { ...it, lower, upper, noSpread: false }
}

/**
 * An extra loss that has no limits, and why.
 *
 * @example
 * withoutLimits({ n: 1, mean: 2, extra: 1 }, 'One session alone has no spread to judge by.').upper // undefined
 */
export function withoutLimits(
  it: { n: number; mean?: number; extra?: number },
  unavailable: string,
  { noSpread = false }: { noSpread?: boolean } = {},
): ExtraLoss {
  return {
    n: it.n,
    mean: finite(it.mean),
    extra: finite(it.extra),
    se: undefined,
    df: undefined,
    lower: undefined,
    upper: undefined,
    sd: undefined,
    noSpread,
    unavailable,
  }
}

/**
 * Do all differences have one value, but for the last digits?
 *
 * @example
 * allEqual([0.3 - 0.1, 0.4 - 0.2], 0.4) // true
 */
export function allEqual(differences: readonly number[], largest: number): boolean {
  const first = differences[0] ?? 0
  return differences.every((it) => Math.abs(it - first) <= rounding * largest)
}

function finite(value: number | undefined): number | undefined {
  return value !== undefined && Number.isFinite(value) ? value : undefined
}
