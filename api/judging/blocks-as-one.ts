import { joining } from '#api/science/design/unit-of-factor.ts'
import type { ComparedRow } from './compared-row.ts'

export type BlocksAsOne = {
  /** Some unit reaches across blocks. */
  readonly any: boolean
  /** The name that a block shares with those that count as one with it, for a level against the reference. */
  readonly groupOf: (level: string, reference: string) => (block: string) => string
}

/**
 * Blocks that a unit of a level, or of the reference, reaches across (their skeins shared a wash jar): for that level
 * they count as one.
 *
 * @example
 * const rows = [{ level: '35', block: 'Mon', unit: 'jar 1' }, { level: '35', block: 'Tue', unit: 'jar 1' }]
 * blocksAsOne(rows).groupOf('35', '75')('Tue') === blocksAsOne(rows).groupOf('35', '75')('Mon') // true
 */
export function blocksAsOne(rows: readonly Pick<ComparedRow, 'level' | 'block' | 'unit'>[]): BlocksAsOne {
  const reach = new Map<string, { level: string; blocks: Set<string> }>()
  for (const { level, block, unit } of rows) {
    const key = JSON.stringify([level, unit])
    const it = reach.get(key) ?? { level, blocks: new Set() }
    it.blocks.add(block)
    reach.set(key, it)
  }
  const wide = [...reach.values()].filter((it) => it.blocks.size > 1)
  return {
    any: wide.length > 0,
    groupOf: (level, reference) => {
      const { find, unite } = joining()
      for (const it of wide) {
        if (it.level !== level && it.level !== reference) continue
        const [first = '', ...others] = it.blocks
        for (const block of others) unite(first, block)
      }
      return find
    },
  }
}
