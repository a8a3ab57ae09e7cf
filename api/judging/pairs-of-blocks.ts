import { groupBy } from '#api/science/group-by.ts'
import { blocksAsOne } from './blocks-as-one.ts'
import type { ComparedRow } from './compared-row.ts'

/** A block that holds both a level and the reference. */
export type Pair = {
  readonly level: number
  readonly reference: number
  /** By how much the level is worse; below 0 it is better. */
  readonly worse: number
}

/**
 * Pairs of a level with the reference, for grades, steps and yes or no. A unit is the median of its skeins, and a level
 * in a block the median of its units, of two in the middle the worse. Blocks that one unit reaches across are one pair: that of
 * them with the largest amount.
 *
 * @param sign    1 where smaller is better, −1 where larger is.
 * @param amount  What is asked of a pair: how much worse it is, or how far apart.
 *
 * @example
 * const row = (level, block, value) => ({ level, block, unit: level + block, vessel: level + block, value })
 * pairsOf([row('20', 'Mon', 3.5), row('75', 'Mon', 4.5), row('20', 'Tue', 4)], { level: '20', reference: '75', sign: -1, amount: (pair) => pair.worse }) // [{ level: 3.5, reference: 4.5, worse: 1 }]
 */
export function pairsOf(
  rows: readonly ComparedRow[],
  {
    level,
    reference,
    sign,
    amount,
  }: {
    readonly level: string
    readonly reference: string
    readonly sign: 1 | -1
    readonly amount: (pair: Pair) => number
  },
): Pair[] {
  const levels = blockValues(rows, level, sign)
  const references = blockValues(rows, reference, sign)
  const groupOf = blocksAsOne(rows).groupOf(level, reference)
  const pairs = new Map<string, Pair>()
  for (const [block, value] of levels) {
    const other = references.get(block)
    if (other === undefined) continue
    const pair = { level: value, reference: other, worse: sign * (value - other) }
    const before = pairs.get(groupOf(block))
    if (!before || amount(pair) > amount(before)) pairs.set(groupOf(block), pair)
  }
  return [...pairs.values()]
}

function blockValues(rows: readonly ComparedRow[], level: string, sign: 1 | -1): Map<string, number> {
  const own = rows.filter((it) => it.level === level)
  return new Map(
    [...groupBy(own, (it) => it.block)].map(([block, mine]) => {
      const units = [...groupBy(mine, (it) => it.unit).values()].map((unit) =>
        median(
          unit.map((it) => it.value),
          sign,
        ),
      )
      return [block, median(units, sign)]
    }),
  )
}

/** Between two grades in the middle there may be none, so the worse stands. */
function median(values: readonly number[], sign: 1 | -1): number {
  const bestFirst = [...values].sort((a, b) => sign * (a - b))
  return bestFirst[Math.floor(bestFirst.length / 2)] ?? Number.NaN
}
