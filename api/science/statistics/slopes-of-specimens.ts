import { type OneSample, oneSample } from './one-sample.ts'
import { straightLine } from './straight-line.ts'
import { compareTwo, type TwoSamples } from './two-samples.ts'
import type { Unavailable } from './unavailable.ts'

/** What one specimen showed at each wash, hour or day. */
export type Course = { readonly x: readonly number[]; readonly y: readonly number[] }

export type SlopesOfSpecimens = {
  readonly slopes: readonly number[]
  readonly mean: OneSample | (Unavailable & { readonly n: number; readonly mean: number }) | Unavailable
}

/**
 * How fast specimens change: a line for each, and then the slopes are the data. A specimen that was read ten times is
 * one specimen; its readings are not independent.
 *
 * @example
 * slopesOfSpecimens([{ x: [0, 1, 2], y: [0, 1, 2] }, { x: [0, 1, 2], y: [0, 2, 4] }]).mean // { n: 2, mean: 1.5, sd: 0.7071068, df: 1 }
 */
export function slopesOfSpecimens(
  courses: readonly Course[],
  { level = 0.95 }: { readonly level?: number } = {},
): SlopesOfSpecimens {
  const slopes = slopesOf(courses)
  if (slopes.length === 0)
    return { slopes, mean: { unavailable: 'No specimen was read at two different places.' } }
  return { slopes, mean: oneSample(slopes, { level }) }
}

/**
 * Do specimens of b change faster than those of a? Welch's t of their slopes.
 *
 * @example
 * const course = (slope) => ({ x: [0, 1, 2], y: [0, slope, 2 * slope] })
 * compareSlopes([course(1), course(2)], [course(4), course(5)]) // { difference: 3, se: 0.7071068, df: 2 }
 */
export function compareSlopes(
  a: readonly Course[],
  b: readonly Course[],
  { level = 0.95 }: { readonly level?: number } = {},
): TwoSamples | Unavailable {
  const [one, other] = [slopesOf(a), slopesOf(b)]
  if (one.length === 0 || other.length === 0)
    return { unavailable: 'No specimen was read at two different places.' }
  return compareTwo(one, other, { level })
}

function slopesOf(courses: readonly Course[]): number[] {
  return courses.flatMap(({ x, y }) => {
    const { slope } = straightLine(x, y)
    return 'estimate' in slope ? [slope.estimate] : []
  })
}
