import type { Verdict } from '#api/science/verdicts/verdict.ts'

/** Fewer pairs than this never hold by grades or yes and no: of four that are as good, more than half might still be worse. */
export const fewestPairs = 5

export type PairsBecause = 'no pair' | 'one unit' | 'a pair over' | 'few pairs' | 'blank' | 'none over'

/**
 * By grades or yes and no every pair must be within the margin; one that is not is enough.
 *
 * @param amounts  Of each pair, in grades or steps: by how much it is worse, or apart.
 * @param margin   Largest amount that is still accepted, 0 or more.
 *
 * @example
 * pairsVerdict([0, -0.5, 0, 0, 0], { margin: 0, fewestUnits: 5, blank: 0 }) // { answer: 'holds', because: 'none over', over: 0 }
 */
export function pairsVerdict(
  amounts: readonly number[],
  {
    margin,
    fewestUnits,
    blank,
  }: { readonly margin: number; readonly fewestUnits: number; readonly blank: number },
): { readonly answer: Verdict; readonly because: PairsBecause; readonly over: number } {
  const over = amounts.filter((it) => it > margin + 1e-9).length
  const open = (because: PairsBecause) => ({ answer: 'not-settled' as const, because, over })
  if (amounts.length === 0) return open('no pair')
  if (fewestUnits < 2) return open('one unit')
  if (over > 0) return { answer: 'does-not-hold', because: 'a pair over', over }
  if (amounts.length < fewestPairs) return open('few pairs')
  if (blank > 0) return open('blank')
  return { answer: 'holds', because: 'none over', over }
}
