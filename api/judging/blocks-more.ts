import { blocksNeeded } from '#api/science/verdicts/blocks-needed.ts'
import type { Deciding } from './deciding-interval.ts'
import { fewestBlocks } from './no-worse-verdict.ts'

/**
 * About how many more blocks would show that a level is no worse, with a chance of 80 %, if its extra is truly what was
 * seen. Raw and net must both come under the margin, so the one that needs more decides. Null where that cannot be said.
 *
 * @param confidence  One-sided, of this comparison.
 *
 * @example
 * const raw = { n: 4, extra: 0.5, sd: 0.5, df: 3, noSpread: false }
 * blocksMore({ raw }, { margin: 1, confidence: 0.95, pooled: false }) // 16
 */
export function blocksMore(
  { raw, net, netOfUpper }: Deciding,
  options: { readonly margin: number; readonly confidence: number; readonly pooled: boolean },
): number | null {
  let most = 0
  for (const it of [raw, net, netOfUpper]) {
    if (!it) continue
    const needed = blocksNeeded(it, options)
    if ('unavailable' in needed) return raw.n < fewestBlocks ? fewestBlocks - raw.n : null
    most = Math.max(most, needed.blocks)
  }
  return Math.max(1, most - raw.n)
}
