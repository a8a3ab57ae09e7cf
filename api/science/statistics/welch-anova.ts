import { fDistribution } from './f-distribution.ts'
import type { GroupMoments } from './one-way-anova.ts'
import { ifFinite, tooLarge, type Unavailable } from './unavailable.ts'

export type WelchAnova = {
  readonly F: number
  readonly df1: number
  readonly df2: number
  readonly p: number
}

/**
 * Do the means of groups differ, when the groups need not have the same spread? (Welch 1951, Biometrika 38,
 * 330–336.) A group of one, or without spread, has no weight that could be known: no answer then.
 *
 * @example
 * welchAnova([{ n: 3, mean: 2, fromOrigin: 1, squares: 2 }, { n: 3, mean: 5, fromOrigin: 4, squares: 2 }]) // { F: 13.5, df1: 1, df2: 4, p: 0.0213 }
 */
export function welchAnova(groups: GroupMoments): WelchAnova | Unavailable {
  if (groups.length < 2) return { unavailable: 'One group alone has nothing to be compared with.' }
  if (groups.some(({ n }) => n === 1))
    return { unavailable: 'A group of one value has no spread of its own.' }
  if (groups.some(({ n, squares }) => squares / (n - 1) === 0))
    return { unavailable: 'A group whose values are all equal has no spread to weigh it by.' }
  // Weights are taken relative to the smallest spread, so that none goes beyond what a number can hold.
  const least = Math.min(...groups.map(({ n, squares }) => squares / (n - 1) / n))
  const weighed = groups.map((group) => ({
    ...group,
    weight: least / (group.squares / (group.n - 1) / group.n),
  }))
  const k = groups.length
  const total = weighed.reduce((sum, { weight }) => sum + weight, 0)
  const grand = weighed.reduce((sum, { weight, fromOrigin }) => sum + (weight / total) * fromOrigin, 0)
  const between = weighed.reduce((sum, { weight, fromOrigin }) => sum + weight * (fromOrigin - grand) ** 2, 0)
  const lack = weighed.reduce((sum, { weight, n }) => sum + (1 - weight / total) ** 2 / (n - 1), 0)
  const F = between / least / (k - 1) / (1 + (2 * (k - 2) * lack) / (k * k - 1))
  const df1 = k - 1
  const df2 = (k * k - 1) / (3 * lack)
  if (!(Number.isFinite(F) && df2 > 0)) return tooLarge
  return ifFinite({ F, df1, df2, p: fDistribution(F, df1, df2).upper })
}
