import { chiSquared } from './chi-squared.ts'
import type { Unavailable } from './unavailable.ts'

export type KruskalWallis = { readonly H: number; readonly df: number; readonly p: number }

/**
 * Do groups differ in rank, whatever the shape of their spread? With the correction for ties (Kruskal & Wallis
 * 1952, J. Am. Stat. Assoc. 47, 583–621); p by chi-squared, which is rough for groups below 5.
 *
 * @example
 * kruskalWallis([[1, 2, 3], [4, 5, 6]]) // { H: 3.857143, df: 1, p: 0.0495 }
 */
export function kruskalWallis(groups: readonly (readonly number[])[]): KruskalWallis | Unavailable {
  if (groups.length < 2) return { unavailable: 'One group alone has nothing to be compared with.' }
  const all = groups.flatMap((values, group) => values.map((value) => ({ value, group })))
  all.sort((one, other) => one.value - other.value)
  const N = all.length
  const rankSums = new Array<number>(groups.length).fill(0)
  let ties = 0
  for (let from = 0; from < N; ) {
    let to = from + 1
    while (to < N && all[to]!.value === all[from]!.value) to++
    const t = to - from
    // Ranks from + 1 … to, shared; counted from the middle rank, so that large sums keep their digits.
    const rank = (from + 1 + to) / 2 - (N + 1) / 2
    for (let i = from; i < to; i++) rankSums[all[i]!.group]! += rank
    ties += t * (t * t - 1)
    from = to
  }
  const correction = 1 - ties / (N * (N * N - 1))
  if (!(correction > 0)) return { unavailable: 'All values are equal, so there are no ranks to compare.' }
  const squares = rankSums.reduce((sum, rank, group) => sum + (rank * rank) / groups[group]!.length, 0)
  const H = (12 * squares) / (N * (N + 1)) / correction
  const df = groups.length - 1
  return { H, df, p: chiSquared(H, df).upper }
}
