import { chiSquaredQuantile } from '#api/science/statistics/chi-squared.ts'
import { type NestedComponents, nestedComponents } from '#api/science/statistics/nested-components.ts'
import { isUnavailable, type Unavailable } from '#api/science/statistics/unavailable.ts'

/** Two readings of one thing differ by more than this many SDs once in twenty: 1.96·√2. */
const times = 2.8

/** One-sided, of each limit. */
const confidence = 0.8

/** One axis of colour: its scatter, and the smallest difference between two readings that is not scatter. */
export type AxisSeen = {
  /** SD between placings of one occasion, and between occasions. */
  readonly placing: number
  readonly day: number
  /** SD of a reading that is the mean of so many placings on one occasion. */
  readonly sd: number
  readonly df: number
  readonly smallest: number
  /** One-sided 80 % limits. */
  readonly lower: number
  readonly upper: number
}

/**
 * The smallest difference that can be told on one axis between two readings on two days: 2.8·√(day² + placing² ÷ k), k
 * placings being averaged. Degrees of freedom by Satterthwaite; where the days add nothing that can be seen, those of the days.
 *
 * @param things     Skeins that were left unchanged: each a list of occasions, each the values of its placings.
 * @param placings   k, 1 or more.
 *
 * @example
 * detectableDifference([[[5, 5.2], [5.6, 5.4]], [[8, 8.2], [7.6, 7.8]]], 2) // { placing: 0.1414, day: 0.2646, sd: 0.2828, df: 2, smallest: 0.792, lower: 0.624, upper: 1.677 }
 */
export function detectableDifference(
  things: readonly (readonly (readonly number[])[])[],
  placings: number,
): AxisSeen | Unavailable {
  const parts = nestedComponents(things)
  if (isUnavailable(parts)) return parts
  const { variance, df } = ofReading(parts, placings)
  if (!(variance > 0)) return { unavailable: 'All readings are the same: were they copied?' }
  const smallest = times * Math.sqrt(variance)
  return {
    placing: Math.sqrt(parts.within.variance),
    day: Math.sqrt(parts.between.variance),
    sd: Math.sqrt(variance),
    df,
    smallest,
    lower: smallest * Math.sqrt(df / chiSquaredQuantile(confidence, df)),
    upper: smallest * Math.sqrt(df / chiSquaredQuantile(1 - confidence, df)),
  }
}

function ofReading({ within, between, size }: NestedComponents, placings: number) {
  const variance = between.variance + within.variance / placings
  const share = 1 / placings - 1 / size
  // More placings than were taken on a day, or days that add nothing: only the days tell how well it is known.
  if (between.variance === 0 || share < 0 || within.df === 0) return { variance, df: between.df }
  const days = between.meanSquare / size
  const rest = share * within.meanSquare
  const df = variance ** 2 / (days ** 2 / between.df + rest ** 2 / within.df)
  return { variance, df }
}

/**
 * How many placings must be averaged for the smallest difference to come down to what is wanted; undefined where days
 * alone differ too much.
 *
 * @example
 * [placingsNeeded({ placing: 0.3, day: 0 }, 0.5), placingsNeeded({ placing: 0.3, day: 0.2 }, 0.5)] // [3, undefined]
 */
export function placingsNeeded(
  { placing, day }: Pick<AxisSeen, 'placing' | 'day'>,
  wanted: number,
): number | undefined {
  const left = (wanted / times) ** 2 - day ** 2
  if (!(left > 0)) return undefined
  return Math.max(1, Math.ceil((placing ** 2 / left) * (1 - 1e-12)))
}
