import { moments } from './moments.ts'
import { studentTQuantile } from './student-t.ts'
import type { Unavailable } from './unavailable.ts'

export type PredictionLimits = {
  readonly n: number
  readonly mean: number
  readonly sd: number
  /** One-sided: with this confidence the next value is not below, not above. */
  readonly lower: number
  readonly upper: number
}

/**
 * Between which limits the next value will come, when those before it are a sample of the same kind:
 * mean ± t(confidence, n − 1)·s·√(1 + 1/n). With means of batches of one size as values it is the limit of the next batch’s
 * mean, with all that varies between batches in it.
 *
 * Source: Hahn & Meeker (1991), Statistical Intervals, section 4.7.
 *
 * @param confidence  One-sided.
 *
 * @example
 * predictionLimits([0.5, 0.3, 0.5], { confidence: 0.95 }) // { n: 3, mean: 0.4333, sd: 0.11547, upper: 0.8227 }
 */
export function predictionLimits(
  values: readonly number[],
  { confidence }: { readonly confidence: number },
): PredictionLimits | Unavailable {
  if (values.length < 2) return { unavailable: 'One value alone says nothing of the next.' }
  const { n, mean, squares } = moments(values)
  const sd = Math.sqrt(squares / (n - 1))
  const reach = studentTQuantile(confidence, n - 1) * sd * Math.sqrt(1 + 1 / n)
  return { n, mean, sd, lower: mean - reach, upper: mean + reach }
}
