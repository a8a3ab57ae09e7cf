import { allEqual, extraLoss, withoutLimits } from './extra-loss.ts'
import type { ExtraLoss } from './level-rows.ts'
import type { LevelResults } from './results-by-level.ts'

/**
 * A level's extra loss over the reference by differences within blocks that hold both: t with one degree of freedom
 * fewer than there are blocks.
 *
 * @param sign     1 where smaller is better, −1 where larger is.
 * @param groupOf  Blocks that were not independent of each other (their skeins shared a wash jar) have one group and
 *                 count once; each block is its own group unless said.
 *
 * @example
 * const level = { vessels: [], units: [], blocks: new Map([['Mon', 2], ['Tue', 4]]) }
 * const reference = { vessels: [], units: [], blocks: new Map([['Mon', 1], ['Tue', 2]]) }
 * pairedExtraLoss(level, reference, { confidence: 0.95 }) // { n: 2, mean: 3, extra: 1.5, se: 0.5, df: 1, upper: 4.657 }
 */
export function pairedExtraLoss(
  level: LevelResults,
  reference: LevelResults,
  { confidence, sign = 1, groupOf = (block) => block }: PairedOptions,
): ExtraLoss {
  const groups = new Map<string, { level: number; difference: number; n: number }>()
  let largest = 0
  for (const [block, value] of level.blocks) {
    const other = reference.blocks.get(block)
    if (other === undefined) continue
    largest = Math.max(largest, Math.abs(value), Math.abs(other))
    const group = groups.get(groupOf(block)) ?? { level: 0, difference: 0, n: 0 }
    groups.set(groupOf(block), {
      level: group.level + value,
      difference: group.difference + sign * (value - other),
      n: group.n + 1,
    })
  }
  const means = [...groups.values()].map((it) => ({
    level: it.level / it.n,
    difference: it.difference / it.n,
  }))
  const n = means.length
  if (n === 0) return withoutLimits({ n }, 'No session holds both this level and the reference.')
  const mean = means.reduce((sum, it) => sum + it.level, 0) / n
  const differences = means.map((it) => it.difference)
  const extra = differences.reduce((sum, it) => sum + it, 0) / n
  if (n === 1) return withoutLimits({ n, mean, extra }, 'One session alone has no spread to judge by.')
  if (allEqual(differences, largest))
    return withoutLimits({ n, mean, extra }, 'All differences are equal: were values copied or rounded?', {
      noSpread: true,
    })
  const sd = Math.sqrt(differences.reduce((sum, it) => sum + (it - extra) ** 2, 0) / (n - 1))
  return extraLoss({ n, mean, extra, se: sd / Math.sqrt(n), df: n - 1, sd }, confidence)
}

export type PairedOptions = {
  readonly confidence: number
  readonly sign?: 1 | -1
  readonly groupOf?: ((block: string) => string) | undefined
}
