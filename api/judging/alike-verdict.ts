import type { Verdict } from '#api/science/verdicts/verdict.ts'
import { type Because, type DifferenceKnown, fewestBlocks } from './no-worse-verdict.ts'

/**
 * Are two levels alike, within the margin either way? Two one-sided tests: both limits must lie inside ±margin; they
 * differ when one limit lies wholly outside.
 *
 * @throws RangeError for a margin that is not above 0
 * @see Schuirmann (1987), J. Pharmacokinet. Biopharm. 15, 657–680.
 *
 * @example
 * const compared = { raw: { n: 7, noSpread: false }, interval: { lower: -0.16, upper: 0.07 } }
 * alike({ compared, margin: 0.3, fewestUnits: 7, blank: 0, noiseStops: false }) // { answer: 'holds', because: 'under the margin' }
 */
export function alike({ compared, margin, fewestUnits, blank, noiseStops }: DifferenceKnown): {
  readonly answer: Verdict
  readonly because: Because
} {
  if (!(margin > 0)) throw new RangeError('The margin is more than 0.')
  const { raw, interval } = compared
  const open = (because: Because) => ({ answer: 'not-settled' as const, because })
  if (raw.n === 0) return open('no pair')
  if (fewestUnits < 2) return open('one unit')
  if (raw.noSpread) return open('no spread')
  if (!interval) return open(raw.n < fewestBlocks ? 'few blocks' : 'no limits')
  const { lower, upper } = interval
  if (lower > margin || upper < -margin) return { answer: 'does-not-hold', because: 'over the margin' }
  if (raw.n < fewestBlocks) return open('few blocks')
  if (blank > 0) return open('blank')
  if (!(upper < margin && lower > -margin)) return open('limit')
  if (noiseStops) return open('noise')
  return { answer: 'holds', because: 'under the margin' }
}
