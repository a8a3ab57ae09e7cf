import { netOfNoise } from '#api/science/fastness/net-of-noise.ts'
import { groupBy } from '#api/science/group-by.ts'
import { type ManyToOne, manyToOne } from '#api/science/statistics/many-to-one.ts'
import { oneSample } from '#api/science/statistics/one-sample.ts'
import { signFlip } from '#api/science/statistics/sign-flip.ts'
import { isUnavailable } from '#api/science/statistics/unavailable.ts'
import { type ArmValue, blockCells } from './block-cells.ts'
import type { Noise } from './noise.ts'

/** A difference with its one-sided limits, in the unit of the outcome; above 0 where the arm is better. */
type Limits = { readonly gain: number; readonly lower: number; readonly upper: number }

export type GainFound = {
  readonly arm: string
  /** Blocks that hold both; without blocks, units of the arm or of the control, whichever are fewer. */
  readonly n: number
  /** Units that were given the arm, and the control, independently. */
  readonly units: { readonly arm: number; readonly control: number }
  /** Mean of the arm, as read. */
  readonly mean: number | undefined
  readonly raw: (Limits & { readonly se: number; readonly df: number }) | undefined
  /** With the measuring error taken off each value. */
  readonly net: Limits | undefined
  /** Both ends as they decide: the lower the smallest of raw, net and net by the upper limit of the error; the upper the larger of raw and net. */
  readonly deciding: Limits | undefined
  readonly adjusted: ManyToOne['adjusted']
  readonly arms: number
  /** The arm’s own blocks alone: Student’s t, unadjusted. */
  readonly own: { readonly lower: number; readonly upper: number } | undefined
  /** Exact p of “no more than the least gain” by flipping signs. */
  readonly signFlipP: number | undefined
  readonly signFlipPatterns: number | undefined
  /** Why there are no limits. */
  readonly unavailable: string | undefined
}

export type GainQuestion = {
  readonly control: string
  readonly direction: 'smaller is better' | 'larger is better'
  /** One-sided, of the whole family of arms. */
  readonly confidence: number
  readonly blocked: boolean
  readonly least?: number
  /** In the unit of the values; only where they are lengths that noise makes longer. */
  readonly noise?: Pick<Noise, 'rms' | 'upperRms'> | undefined
}

/**
 * What each arm brings over the control, by a linear model of block + arm; simultaneous limits for several arms.
 *
 * A length (a ΔE) is never negative, so noise makes small ones longer and large ones hardly: a gain as it was read is too
 * small rather than too large. Taking the error off raises it, and too much of it too far. So “better” stands on the
 * smallest lower limit, “not better” on the larger upper limit.
 *
 * @example
 * const row = (arm, block, value) => ({ arm, block, unit: arm + block, value })
 * const rows = [row('now', '1', 8), row('hot', '1', 5), row('now', '2', 9), row('hot', '2', 7), row('now', '3', 7), row('hot', '3', 3)]
 * gainsOverControl(rows, { control: 'now', direction: 'smaller is better', confidence: 0.95, blocked: true }) // [{ arm: 'hot', n: 3, raw: { gain: 3, lower: 1.314, upper: 4.686, df: 2 }, adjusted: 'none', signFlipP: 0.125 }]
 */
export function gainsOverControl(rows: readonly ArmValue[], question: GainQuestion): GainFound[] {
  const { control, noise, blocked } = question
  const arms = [...groupBy(rows, ({ arm }) => arm).keys()].filter((arm) => arm !== control)
  const cells = blockCells(rows, { blocked })
  const raw = manyToOne(cells, question)
  const netBy = (rms: number) =>
    manyToOne(
      blockCells(
        rows.map((row) => ({ ...row, value: netOfNoise(row.value, rms) })),
        { blocked },
      ),
      question,
    )
  const net = noise && netBy(noise.rms)
  const netOfMore = noise && netBy(noise.upperRms)
  return arms.map((arm): GainFound => {
    const read = limitsOf(raw, arm, question)
    const off = net && limitsOf(net, arm, question)
    const offMore = netOfMore && limitsOf(netOfMore, arm, question)
    const mine = cells.filter((cell) => cell.arm === arm)
    const gains = blocked ? gainsByBlock(cells, arm, question) : []
    const own = gains.length > 1 ? oneSample(gains, { level: 2 * question.confidence - 1 }) : undefined
    const flipped = signFlip(gains, { least: question.least ?? 0, confidence: question.confidence })
    const units = { arm: unitsOf(rows, arm), control: unitsOf(rows, control) }
    return {
      arm,
      n: blocked ? gains.length : Math.min(units.arm, units.control),
      units,
      mean: mine.reduce((sum, { value }) => sum + value, 0) / mine.length,
      raw: read,
      net: off,
      deciding: read && {
        gain: read.gain,
        lower: Math.min(...[read, off, offMore].flatMap((it) => (it ? [it.lower] : []))),
        upper: Math.max(...[read, off].flatMap((it) => (it ? [it.upper] : []))),
      },
      adjusted: isUnavailable(raw) ? 'none' : raw.adjusted,
      arms: arms.length,
      own: own === undefined || isUnavailable(own) ? undefined : { lower: own.lower, upper: own.upper },
      signFlipP: flipped?.pGreater,
      signFlipPatterns: flipped?.patterns,
      unavailable: read ? undefined : isUnavailable(raw) ? raw.unavailable : 'It never met the control.',
    }
  })
}

function limitsOf(
  found: ReturnType<typeof manyToOne>,
  arm: string,
  { direction }: GainQuestion,
): GainFound['raw'] {
  if (isUnavailable(found)) return undefined
  const it = found.comparisons.find((comparison) => comparison.arm === arm)
  if (!it) return undefined
  const { se, oneSided, difference } = it
  const common = { se, df: found.df }
  return direction === 'larger is better'
    ? { ...common, gain: difference, lower: oneSided.lower, upper: oneSided.upper }
    : { ...common, gain: -difference, lower: -oneSided.upper, upper: -oneSided.lower }
}

function gainsByBlock(
  cells: ReturnType<typeof blockCells>,
  arm: string,
  { control, direction }: GainQuestion,
): number[] {
  const sign = direction === 'larger is better' ? 1 : -1
  const controls = new Map(cells.flatMap((it) => (it.arm === control ? [[it.block, it.value]] : [])))
  return cells.flatMap((it) => {
    const other = it.arm === arm ? controls.get(it.block) : undefined
    return other === undefined ? [] : [sign * (it.value - other)]
  })
}

const unitsOf = (rows: readonly ArmValue[], arm: string): number =>
  new Set(rows.filter((row) => row.arm === arm).map(({ unit }) => unit)).size
