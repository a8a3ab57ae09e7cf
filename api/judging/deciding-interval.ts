import { netOfNoise } from '#api/science/fastness/net-of-noise.ts'
import type { ExtraLoss } from '#api/science/verdicts/level-rows.ts'
import { type AgainstReference, againstReference, type Comparing } from './against-reference.ts'
import type { ComparedRow } from './compared-row.ts'
import type { Noise } from './noise.ts'

/** A level against the reference as it was read, and with the measuring error taken off. */
export type Deciding = {
  readonly raw: ExtraLoss
  readonly net: ExtraLoss | undefined
  /** Net of the upper limit of the measuring error. */
  readonly netOfUpper: ExtraLoss | undefined
  /** The limits that decide; undefined where one of the three could not be worked out. */
  readonly interval: { readonly lower: number; readonly upper: number } | undefined
}

/**
 * The interval that decides and is printed. Measuring error lengthens a small loss more than a large one, so the
 * difference of two losses is read too small: the upper end is the largest of raw, net, and net of the error’s upper
 * limit. The lower end is the smaller of raw and net; net alone would call too much worse.
 *
 * @param noise  In the unit of the values, which are lengths (ΔE00); without it the raw limits decide.
 *
 * @example
 * const level = (level, ...values) => values.map((value, i) => ({ level, block: `run ${i}`, unit: `${level} ${i}`, vessel: `${level} ${i}`, value }))
 * const rows = [...level('35', 1.15, 0.68, 0.87, 1.4), ...level('75', 1.22, 0.97, 1.05, 0.78)]
 * const asked = { reference: '75', method: 'paired', ordered: true, confidence: 0.95 }
 * decidingIntervals(rows, asked, { rms: 0.308, upperRms: 0.419 }).at('35').interval // { lower: -0.49, upper: 0.55 }
 */
export function decidingIntervals(
  rows: readonly ComparedRow[],
  asked: Omit<Comparing, 'change'>,
  noise: Pick<Noise, 'rms' | 'upperRms'> | undefined,
): Omit<AgainstReference, 'at'> & { readonly at: (level: string) => Deciding } {
  const raw = againstReference(rows, asked)
  const netOf = (rms: number) =>
    againstReference(rows, { ...asked, change: (value) => netOfNoise(value, rms) })
  const net = noise && netOf(noise.rms)
  const netOfUpper = noise && netOf(noise.upperRms)
  return {
    ...raw,
    at: (level) => deciding(raw.at(level), net?.at(level), netOfUpper?.at(level)),
  }
}

/**
 * The deciding limits from the three comparisons.
 *
 * @example
 * deciding({ lower: -0.47, upper: 0.50 }, { lower: -0.50, upper: 0.53 }, { lower: -0.52, upper: 0.55 }).interval // { lower: -0.50, upper: 0.55 }
 */
export function deciding(
  raw: ExtraLoss,
  net: ExtraLoss | undefined,
  netOfUpper: ExtraLoss | undefined,
): Deciding {
  const all = [raw, ...(net ? [net] : []), ...(netOfUpper ? [netOfUpper] : [])]
  const uppers = all.flatMap((it) => (it.upper === undefined ? [] : [it.upper]))
  const lowers = all.slice(0, 2).flatMap((it) => (it.lower === undefined ? [] : [it.lower]))
  const known = uppers.length === all.length && lowers.length === Math.min(2, all.length)
  const interval = known ? { lower: Math.min(...lowers), upper: Math.max(...uppers) } : undefined
  return { raw, net, netOfUpper, interval }
}
