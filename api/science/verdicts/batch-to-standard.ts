import { ciede2000 } from '../colour/ciede2000.ts'
import type { Lab } from '../colour/lab.ts'
import { mcdm, meanLab } from '../colour/mean-colour.ts'
import { studentTQuantile } from '../statistics/student-t.ts'
import type { Verdict } from './verdict.ts'

/** Fewer batches than this say nothing about the next one. */
export const fewestBatches = 3

/** The largest ΔE00 of a batch's mean to the standard: of one lot, and of one colourway. */
export const batchLimits = { 'same lot': 1, 'same colourway': 2 } as const

/** The largest ΔE00 of a single skein to the standard. */
export const skeinLimit = 3

export type Batch = { readonly batch: string; readonly skeins: readonly Lab[] }

export type BatchResult = {
  readonly batch: string
  readonly skeins: number
  /** ΔE00 of the batch's mean colour to the standard's. */
  readonly toStandard: number
  /** Of its worst skein. */
  readonly worstSkein: number
  /** Mean ΔE00 of its skeins from their own mean. */
  readonly mcdm: number
  readonly meets: boolean
}

export type BatchVerdict = {
  readonly verdict: Verdict
  readonly batches: readonly BatchResult[]
  /** With 95 % the next batch's mean comes no further than this from the standard; needs two batches. */
  readonly nextBatchUpTo: number | undefined
  readonly why: string
}

/**
 * Do batches repeat the kept standard? Each batch's mean must come within `limit` of it, and each skein within
 * `worstSkein`. One batch over a limit is enough to say no; fewer than three that meet it settle nothing.
 *
 * @param standard    Skeins of the kept standard; their mean colour is what is compared with.
 * @param limit       ΔE00; 2.0, that of one colourway, unless given.
 * @throws RangeError without standard, without batches, or for a batch without skeins.
 *
 * @example
 * const batch = (batch, L) => ({ batch, skeins: [{ L, a: 20, b: -8 }] })
 * batchToStandard([batch('1', 38), batch('2', 38.5), batch('3', 37.5)], { standard: [{ L: 38, a: 20, b: -8 }] }).verdict // 'holds'
 */
export function batchToStandard(
  batches: readonly Batch[],
  {
    standard,
    limit = batchLimits['same colourway'],
    worstSkein = skeinLimit,
  }: { readonly standard: readonly Lab[]; readonly limit?: number; readonly worstSkein?: number },
): BatchVerdict {
  if (batches.length === 0) throw new RangeError('There is no batch to compare.')
  const target = meanLab(standard)
  const results = batches.map(({ batch, skeins }): BatchResult => {
    const toStandard = ciede2000(target, meanLab(skeins))
    const worst = Math.max(...skeins.map((skein) => ciede2000(target, skein)))
    return {
      batch,
      skeins: skeins.length,
      toStandard,
      worstSkein: worst,
      mcdm: mcdm(skeins),
      meets: toStandard <= limit && worst <= worstSkein,
    }
  })
  const found = { batches: results, nextBatchUpTo: nextUpTo(results.map((it) => it.toStandard)) }
  const off = results.filter((it) => !it.meets)
  if (off.length > 0)
    return {
      ...found,
      verdict: 'does-not-hold',
      why: `Off the standard: ${off.map((it) => it.batch).join(', ')}.`,
    }
  if (results.length < fewestBatches)
    return {
      ...found,
      verdict: 'not-settled',
      why: 'Fewer than three batches say nothing about the next one.',
    }
  return { ...found, verdict: 'holds', why: `All ${results.length} batches meet it.` }
}

/** The one-sided 95 % prediction limit of one more value. */
function nextUpTo(values: readonly number[]): number | undefined {
  const n = values.length
  if (n < 2) return undefined
  const mean = values.reduce((sum, it) => sum + it, 0) / n
  const sd = Math.sqrt(values.reduce((sum, it) => sum + (it - mean) ** 2, 0) / (n - 1))
  return mean + studentTQuantile(0.95, n - 1) * sd * Math.sqrt(1 + 1 / n)
}
