import { netOfNoise } from '#api/science/fastness/net-of-noise.ts'
import { groupBy } from '#api/science/group-by.ts'
import { allEqual, extraLoss, withoutLimits } from '#api/science/verdicts/extra-loss.ts'
import type { ExtraLoss } from '#api/science/verdicts/level-rows.ts'
import type { Verdict } from '#api/science/verdicts/verdict.ts'
import { type Deciding, deciding } from './deciding-interval.ts'
import type { Noise } from './noise.ts'
import { noiseStops } from './noise-gates.ts'

/** Fewer cards than this never make a “holds”. */
export const fewestCards = 3

/** Two halves of one skein on one card: the ΔE00 between them in one sitting; undefined: not read. */
export type HalvesOnCard = { readonly card: string; readonly dE: number | undefined }

/** What the cards came to, with the limits that decide. */
export type OpenAgainstCovered = Deciding & {
  readonly answer: Verdict
  /** Cards that were read. */
  readonly n: number
  readonly blank: readonly string[]
  readonly stopped: string | undefined
}

/**
 * Did what lay open to the light change by less than a margin, against what lay covered beside it? The mean over cards of
 * the ΔE00 between halves, with one-sided t limits; several skeins on a card are one mean first. The measuring error is
 * taken off each difference before that; the upper end is the largest of raw, net, and net of the error’s upper limit.
 *
 * @param confidence  One-sided.
 *
 * @example
 * const halves = [0.5, 0.6, 0.7, 0.6].map((dE, i) => ({ card: String(i), dE }))
 * const noise = { kind: 'twins', rms: 0.2, upperRms: 0.24, df: 9, floor: 0.18 }
 * openAgainstCovered(halves, { margin: 1, confidence: 0.95, noise }) // { answer: 'holds', n: 4, interval: { lower: 0.463, upper: 0.696 } }
 */
export function openAgainstCovered(
  halves: readonly HalvesOnCard[],
  {
    margin,
    confidence,
    noise,
  }: {
    readonly margin: number
    readonly confidence: number
    readonly noise: Pick<Noise, 'kind' | 'rms' | 'upperRms' | 'df' | 'floor'> | undefined
  },
): OpenAgainstCovered {
  const read = halves.flatMap(({ card, dE }) => (dE === undefined ? [] : [{ card, dE }]))
  const over = (change: (dE: number) => number) =>
    meanOverCards(
      [...groupBy(read, ({ card }) => card).values()].map((mine) => meanOf(mine.map(({ dE }) => change(dE)))),
      confidence,
    )
  const raw = over((dE) => dE)
  const netOf = (rms: number | undefined) =>
    rms === undefined ? undefined : over((dE) => netOfNoise(dE, rms))
  const limits = deciding(raw, netOf(noise?.rms), netOf(noise?.upperRms))
  const blank = [...new Set(halves.flatMap(({ card, dE }) => (dE === undefined ? [card] : [])))]
  const found = { ...limits, n: raw.n, blank, stopped: undefined }
  const { interval } = limits
  if (!interval) return { ...found, answer: 'not-settled' }
  if (interval.lower > margin) return { ...found, answer: 'does-not-hold' }
  if (interval.upper >= margin || raw.n < fewestCards || blank.length > 0)
    return { ...found, answer: 'not-settled' }
  const stopped = noiseStops(noise, margin)
  return { ...found, stopped, answer: stopped === undefined ? 'holds' : 'not-settled' }
}

function meanOverCards(values: readonly number[], confidence: number): ExtraLoss {
  const n = values.length
  if (n === 0) return withoutLimits({ n }, 'Nothing was read.')
  const mean = meanOf(values)
  if (n === 1) return withoutLimits({ n, mean, extra: mean }, 'One card alone has no spread to judge by.')
  if (allEqual(values, Math.max(...values.map(Math.abs))))
    return withoutLimits({ n, mean, extra: mean }, 'All cards are equal: were values copied or rounded?', {
      noSpread: true,
    })
  const sd = Math.sqrt(values.reduce((sum, it) => sum + (it - mean) ** 2, 0) / (n - 1))
  return extraLoss({ n, mean, extra: mean, se: sd / Math.sqrt(n), df: n - 1, sd }, confidence)
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, it) => sum + it, 0) / values.length
}
