import type { LadderRule, Level, LevelRow } from './level-rows.ts'

/**
 * The levels of a ladder from least to most. Numbers order themselves; text has the order that the rule gives.
 *
 * @throws RangeError for text levels without an order, a level twice in the order, or a row whose level is not in it.
 *
 * @example
 * ladderOfLevels([{ level: 35, value: 1 }, { level: 20, value: 2 }, { level: 35, value: 1 }]) // [20, 35]
 */
export function ladderOfLevels(
  rows: readonly LevelRow[],
  { order }: Pick<LadderRule, 'order'> = {},
): readonly Level[] {
  if (order === undefined) {
    const levels = new Map(rows.map((row) => [String(row.level), row.level]))
    const numbers = [...levels.values()].map((level) => {
      if (typeof level === 'number') return level
      throw new RangeError(`“${level}” is no number, so the levels need an order, least first.`)
    })
    return numbers.sort((a, b) => a - b)
  }
  const known = new Set(order.map(String))
  if (known.size < order.length) throw new RangeError('The order names a level twice.')
  for (const { level } of rows)
    if (!known.has(String(level))) throw new RangeError(`The level “${level}” is not in the order.`)
  return order
}
