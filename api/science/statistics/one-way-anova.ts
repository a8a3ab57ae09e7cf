import { fDistribution } from './f-distribution.ts'
import { type Moments, moments } from './moments.ts'
import { ifFinite, tooLarge, type Unavailable } from './unavailable.ts'

export type AnovaSums = {
  readonly dfBetween: number
  readonly dfWithin: number
  readonly ssBetween: number
  readonly ssWithin: number
}
export type OneWayAnova = AnovaSums & {
  readonly F: number
  readonly p: number
  readonly msWithin: number
  readonly etaSquared: number
}

/** Moments of each group, their means counted from one common origin. */
export type GroupMoments = readonly Moments[]

/**
 * The moments of groups about one origin, the first value of all.
 *
 * @throws RangeError when a group is empty
 *
 * @example
 * groupMoments([[1, 3], [2]]).map(({ fromOrigin }) => fromOrigin) // [1, 1]
 */
export function groupMoments(groups: readonly (readonly number[])[]): GroupMoments {
  const origin = groups[0]?.[0]
  return groups.map((values) => moments(values, origin))
}

/**
 * One-way analysis of variance: do the means of groups differ by more than the spread within them explains?
 * (Fisher 1925; Montgomery, Design and Analysis of Experiments, chapter 3.)
 *
 * @example
 * oneWayAnova(groupMoments([[1, 2, 3], [4, 5, 6]])) // { F: 13.5, p: 0.0213, dfBetween: 1, dfWithin: 4, ssBetween: 13.5, ssWithin: 4 }
 */
export function oneWayAnova(groups: GroupMoments): OneWayAnova | Unavailable | (AnovaSums & Unavailable) {
  if (groups.length < 2) return { unavailable: 'One group alone has nothing to be compared with.' }
  const N = groups.reduce((sum, { n }) => sum + n, 0)
  const grand = groups.reduce((sum, { n, fromOrigin }) => sum + n * fromOrigin, 0) / N
  const sums = {
    dfBetween: groups.length - 1,
    dfWithin: N - groups.length,
    ssBetween: groups.reduce((sum, { n, fromOrigin }) => sum + n * (fromOrigin - grand) ** 2, 0),
    ssWithin: groups.reduce((sum, { squares }) => sum + squares, 0),
  }
  if (sums.dfWithin === 0)
    return { ...sums, unavailable: 'Each group has one value alone, so no spread within groups is known.' }
  const msWithin = sums.ssWithin / sums.dfWithin
  if (msWithin === 0)
    return { ...sums, unavailable: 'All values within each group are equal: were they copied or rounded?' }
  const F = sums.ssBetween / sums.dfBetween / msWithin
  if (!Number.isFinite(F)) return tooLarge
  const { upper: p } = fDistribution(F, sums.dfBetween, sums.dfWithin)
  const etaSquared = sums.ssBetween / (sums.ssBetween + sums.ssWithin)
  return ifFinite({ F, p, ...sums, msWithin, etaSquared })
}
