import { groupBy } from '#api/science/group-by.ts'
import { binomialAtLeast } from '#api/science/statistics/binomial.ts'
import { type ArmValue, joinedBlocks } from './block-cells.ts'

/** How the pairs of one arm with the control came out, by grades or yes and no. */
export type GradedGain = {
  readonly arm: string
  /** Blocks that hold both. */
  readonly pairs: number
  readonly better: number
  readonly worse: number
  /** Exact, one-sided: as many better by chance alone, and as many worse. A tie counts as not better, and as not worse. */
  readonly pBetter: number
  readonly pWorse: number
  /** The share of chances that each may take: 1 − confidence, over the arms. */
  readonly alpha: number
  /** Up to what share of pairs may still be better, by the exact limit: where none was. */
  readonly shareBetterUpTo: number | undefined
  readonly units: { readonly arm: number; readonly control: number }
}

/**
 * Arms against a control by grades, counted pair by pair: a sign test, ties against. At 95 % it needs 5 pairs or more
 * that all go one way. Of several units of an arm in a block the median, the worse of the two in the middle.
 *
 * Source: Conover (1999), Practical Nonparametric Statistics, section 3.4; ties are counted against, not left out. Several
 * arms share the confidence equally (Bonferroni).
 *
 * @param least  What counts as better, in grades or steps; any difference when 0.
 *
 * @example
 * const pair = (block, now, hot) => [{ arm: 'now', block, unit: `n${block}`, value: now }, { arm: 'hot', block, unit: `h${block}`, value: hot }]
 * const rows = [...pair('1', 3, 4), ...pair('2', 2.5, 4), ...pair('3', 3, 3.5), ...pair('4', 3, 4.5), ...pair('5', 2, 4)]
 * gradedGains(rows, { control: 'now', direction: 'larger is better', least: 0.5, confidence: 0.95 }) // [{ arm: 'hot', pairs: 5, better: 5, worse: 0, pBetter: 0.03125, pWorse: 1 }]
 */
export function gradedGains(
  rows: readonly ArmValue[],
  {
    control,
    direction,
    least,
    confidence,
  }: {
    readonly control: string
    readonly direction: 'smaller is better' | 'larger is better'
    readonly least: number
    readonly confidence: number
  },
): GradedGain[] {
  const sign = direction === 'larger is better' ? 1 : -1
  const arms = groupBy(joinedBlocks(rows), ({ arm }) => arm)
  const controls = medians(arms.get(control) ?? [], sign)
  const others = [...arms.keys()].filter((arm) => arm !== control)
  const alpha = (1 - confidence) / Math.max(1, others.length)
  return others.map((arm) => {
    const mine = arms.get(arm) ?? []
    const gains = [...medians(mine, sign)].flatMap(([block, value]) => {
      const other = controls.get(block)
      return other === undefined ? [] : [sign * (value - other)]
    })
    const pairs = gains.length
    const better = gains.filter((gain) => (least > 0 ? gain >= least - 1e-9 : gain > 0)).length
    const worse = gains.filter((gain) => gain < 0).length
    return {
      arm,
      pairs,
      better,
      worse,
      pBetter: binomialAtLeast(better, pairs),
      pWorse: binomialAtLeast(worse, pairs),
      alpha,
      shareBetterUpTo: better === 0 && pairs > 0 ? 1 - alpha ** (1 / pairs) : undefined,
      units: { arm: unitsOf(mine), control: unitsOf(arms.get(control) ?? []) },
    }
  })
}

function medians(rows: readonly ArmValue[], sign: 1 | -1): Map<string, number> {
  return new Map(
    [...groupBy(rows, ({ block }) => block)].map(([block, mine]) => {
      const worstFirst = mine.map(({ value }) => sign * value).sort((a, b) => a - b)
      return [block, sign * (worstFirst[Math.ceil(worstFirst.length / 2) - 1] ?? Number.NaN)]
    }),
  )
}

const unitsOf = (rows: readonly ArmValue[]): number => new Set(rows.map(({ unit }) => unit)).size
