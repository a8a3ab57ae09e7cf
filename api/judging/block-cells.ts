import { groupBy } from '#api/science/group-by.ts'
import type { ArmRow } from '#api/science/statistics/many-to-one.ts'

/** One skein’s value: of which arm, in which block, and what was given its arm independently. */
export type ArmValue = {
  readonly arm: string
  readonly block: string
  readonly unit: string
  readonly value: number
}

/**
 * Skeins brought together for comparing arms: the mean of a unit first, then of the units of an arm in a block. Blocks
 * that share a unit (a jar that held skeins of both) are no two blocks, and are one. Without blocks each unit stands for itself.
 *
 * @example
 * const skein = (arm, block, unit, value) => ({ arm, block, unit, value })
 * blockCells([skein('hot', '1', 'jar 1', 2), skein('hot', '1', 'jar 1', 4), skein('hot', '1', 'jar 2', 5)], { blocked: true }) // [{ arm: 'hot', block: '1', value: 4 }]
 */
export function blockCells(rows: readonly ArmValue[], { blocked }: { readonly blocked: boolean }): ArmRow[] {
  if (!blocked)
    return [...groupBy(rows, ({ arm, unit }) => JSON.stringify([arm, unit])).values()].map((unit) => ({
      arm: unit[0]!.arm,
      value: meanOf(unit.map(({ value }) => value)),
    }))
  const cells = groupBy(joinedBlocks(rows), ({ arm, block }) => JSON.stringify([arm, block]))
  return [...cells.values()].map((cell) => ({
    arm: cell[0]!.arm,
    block: cell[0]!.block,
    value: meanOf(
      [...groupBy(cell, ({ unit }) => unit).values()].map((unit) => meanOf(unit.map(({ value }) => value))),
    ),
  }))
}

/**
 * The same rows, blocks that share a unit under one name.
 *
 * @example
 * const skein = (arm, block, unit) => ({ arm, block, unit, value: 1 })
 * joinedBlocks([skein('hot', '1', 'jar'), skein('now', '1', 'a'), skein('hot', '2', 'jar'), skein('now', '3', 'c')]).map(({ block }) => block) // ['1', '1', '1', '3']
 */
export function joinedBlocks(rows: readonly ArmValue[]): ArmValue[] {
  const parents = new Map<string, string>()
  const nameOf = (block: string): string => {
    const parent = parents.get(block) ?? block
    return parent === block ? block : nameOf(parent)
  }
  for (const unit of groupBy(rows, ({ arm, unit }) => JSON.stringify([arm, unit])).values()) {
    const first = nameOf(unit[0]!.block)
    for (const { block } of unit) if (nameOf(block) !== first) parents.set(nameOf(block), first)
  }
  return rows.map((row) => ({ ...row, block: nameOf(row.block) }))
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}
