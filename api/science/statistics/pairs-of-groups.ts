import { dunnettQuantileOfLoadings, dunnettUpperOfLoadings } from './dunnett.ts'
import type { GroupMoments } from './one-way-anova.ts'
import { smoothTable } from './smooth-table.ts'
import { studentizedRangeQuantile, studentizedRangeUpper } from './studentized-range.ts'
import { ifFinite, isUnavailable, tooLarge, type Unavailable } from './unavailable.ts'

/** Two groups by their places; `difference` = mean of b − mean of a. */
export type PairOfGroups = {
  readonly a: number
  readonly b: number
  readonly difference: number
} & (PairAnswer | Unavailable)
type PairAnswer = {
  readonly se: number
  readonly df: number
  readonly lower: number
  readonly upper: number
  readonly p: number
}

type Level = { readonly level: number }

/**
 * All pairs of groups with one common spread, intervals simultaneous: Tukey (1953) and, for unequal sizes, Kramer
 * (1956), Biometrics 12, 307–310.
 *
 * @example
 * const groups = [2, 3, 7].map((mean) => ({ n: 4, mean, fromOrigin: mean, squares: 6 }))
 * tukeyKramer(groups, { level: 0.95 })[1] // { a: 0, b: 2, difference: 5, se: 1, df: 9, lower: 2.208, upper: 7.792 }
 */
export function tukeyKramer(groups: GroupMoments, { level }: Level): PairOfGroups[] {
  const pooled = pooledSpread(groups)
  if (isUnavailable(pooled)) return allPairs(groups, () => pooled)
  const { variance, df } = pooled
  const family = { groups: groups.length, df }
  const critical = studentizedRangeQuantile(level, family)
  return allPairs(groups, (a, b, difference) => {
    const se = Math.sqrt(variance * (1 / a.n + 1 / b.n))
    return answered(difference, se, df, (q) => studentizedRangeUpper(q, family), critical)
  })
}

/**
 * All pairs of groups, each with the spreads of its own two groups: Games & Howell (1976), J. Educ. Stat. 1, 113–125.
 * The family is all groups that are given, also those that are too small for a pair.
 *
 * @example
 * const groups = [2, 7].map((mean) => ({ n: 4, mean, fromOrigin: mean, squares: 6 }))
 * gamesHowell(groups, { level: 0.95 }) // [{ a: 0, b: 1, difference: 5, se: 1, df: 6, lower: 2.553, upper: 7.447, p: 0.002452 }]
 */
export function gamesHowell(groups: GroupMoments, { level }: Level): PairOfGroups[] {
  const criticalAt = criticalRanges(groups.length, level)
  return allPairs(groups, (a, b, difference) => {
    if (a.n === 1 || b.n === 1) return { unavailable: 'A group of one value has no spread of its own.' }
    const [va, vb] = [a, b].map(({ n, squares }) => squares / (n - 1) / n) as [number, number]
    const variance = va + vb
    if (variance === 0) return { unavailable: 'The values of both groups are all equal.' }
    if (!Number.isFinite(variance)) return tooLarge
    const share = va / variance
    const df = 1 / (share ** 2 / (a.n - 1) + (1 - share) ** 2 / (b.n - 1))
    const family = { groups: groups.length, df }
    const critical = criticalAt(df)
    return answered(difference, Math.sqrt(variance), df, (q) => studentizedRangeUpper(q, family), critical)
  })
}

/**
 * Each group against one reference, both sides, one common spread: Dunnett (1955), J. Am. Stat. Assoc. 50, 1096–1121.
 * `reference` is the place of the reference.
 *
 * @example
 * const groups = [2, 7].map((mean) => ({ n: 4, mean, fromOrigin: mean, squares: 6 }))
 * dunnettTest(groups, { level: 0.95, reference: 0 }) // [{ a: 0, b: 1, difference: 5, se: 1, df: 6, lower: 2.553, upper: 7.447, p: 0.002452 }]
 */
export function dunnettTest(
  groups: GroupMoments,
  { level, reference }: Level & { readonly reference: number },
): PairOfGroups[] {
  const pooled = pooledSpread(groups)
  const control = groups[reference]
  if (!control) throw new RangeError('the reference is one of the groups')
  const others = groups.map((group, place) => ({ group, place })).filter(({ place }) => place !== reference)
  const loadings = others.map(({ group }) => Math.sqrt(group.n / (group.n + control.n)))
  const critical =
    isUnavailable(pooled) || others.length === 0
      ? 0
      : Math.SQRT2 * dunnettQuantileOfLoadings(level, { df: pooled.df, loadings })
  return others.map(({ group, place }) => {
    const difference = group.fromOrigin - control.fromOrigin
    const pair = { a: reference, b: place, difference }
    if (isUnavailable(pooled)) return { ...pair, ...pooled }
    const se = Math.sqrt(pooled.variance * (1 / group.n + 1 / control.n))
    const tail = (q: number) => dunnettUpperOfLoadings(q / Math.SQRT2, { df: pooled.df, loadings })
    return { ...pair, ...answered(difference, se, pooled.df, tail, critical) }
  })
}

/** Critical ranges by degrees of freedom; for many pairs from a table over ln df. */
function criticalRanges(groups: number, level: number): (df: number) => number {
  const exactly = (df: number) => studentizedRangeQuantile(level, { groups, df })
  if (groups < 20) return exactly
  const table = smoothTable((logDf) => exactly(Math.exp(logDf)))
  return (df) => table(Math.log(df))
}

/** `critical` and the tail are those of a range, √2 times a t value. */
function answered(
  difference: number,
  se: number,
  df: number,
  tail: (q: number) => number,
  critical: number,
): PairAnswer | Unavailable {
  const q = (Math.SQRT2 * Math.abs(difference)) / se
  const reach = (critical * se) / Math.SQRT2
  if (!Number.isFinite(q)) return tooLarge
  return ifFinite({ se, df, lower: difference - reach, upper: difference + reach, p: tail(q) })
}

function allPairs(
  groups: GroupMoments,
  compare: (a: GroupMoments[number], b: GroupMoments[number], difference: number) => PairAnswer | Unavailable,
): PairOfGroups[] {
  return groups.flatMap((one, a) =>
    groups.slice(a + 1).map((other, i) => {
      const difference = other.fromOrigin - one.fromOrigin
      return { a, b: a + 1 + i, difference, ...compare(one, other, difference) }
    }),
  )
}

function pooledSpread(groups: GroupMoments): { variance: number; df: number } | Unavailable {
  const df = groups.reduce((sum, { n }) => sum + n - 1, 0)
  if (df === 0) return { unavailable: 'Each group has one value alone, so no spread within groups is known.' }
  const variance = groups.reduce((sum, { squares }) => sum + squares, 0) / df
  if (!Number.isFinite(variance)) return tooLarge
  if (variance === 0)
    return { unavailable: 'All values within each group are equal: were they copied or rounded?' }
  return { variance, df }
}
