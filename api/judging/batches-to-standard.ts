import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import type { Lab } from '#api/science/colour/lab.ts'
import { mcdm, meanLab } from '#api/science/colour/mean-colour.ts'
import { netOfNoise } from '#api/science/fastness/net-of-noise.ts'
import { predictionLimits } from '#api/science/statistics/prediction-limit.ts'
import type { Verdict } from '#api/science/verdicts/verdict.ts'
import type { BatchRead } from './batches-of-way.ts'

/** Fewer batches of one way say nothing of the next. */
export const fewestBatches = 3

/** A batch beside the standard, in ΔE00. */
export type BatchFound = {
  readonly name: string
  /** Of its mean colour; where a colour was not read, the mean of what was entered. */
  readonly mean: number
  readonly worst: { readonly skein: string; readonly value: number }
  /** Unevenness: mean of its skeins from their own mean colour. */
  readonly mcdm: number | undefined
  readonly skeins: number
}

type SkeinBeside = { readonly skein: string; readonly lab: Lab | undefined; readonly value: number }

/**
 * What each batch came to beside the standard. Skeins that were lost before they were read are not in it; a batch of
 * which nothing was read is left out.
 *
 * @param standard  Mean colour of the kept skeins; undefined where only differences were entered.
 *
 * @example
 * const skein = (L) => ({ code: `L ${L}`, lab: { L, a: 20, b: -8 }, entered: undefined, lost: undefined })
 * batchesBeside([{ name: 'lot 1', skeins: [skein(37), skein(39.4)] }], { L: 38, a: 20, b: -8 }) // [{ name: 'lot 1', mean: 0.171, worst: { skein: 'L 39.4', value: 1.209 } }]
 */
export function batchesBeside(batches: readonly BatchRead[], standard: Lab | undefined): BatchFound[] {
  return batches.flatMap(({ name, skeins }): BatchFound[] => {
    const read = skeins.flatMap(({ code, lab, entered }): SkeinBeside[] => {
      if (lab && standard) return [{ skein: code, lab, value: ciede2000(standard, lab) }]
      return entered === undefined ? [] : [{ skein: code, lab: undefined, value: entered }]
    })
    const [first] = read
    if (!first) return []
    const labs = read.flatMap(({ lab }) => (lab ? [lab] : []))
    const all = standard && labs.length === read.length
    const furthest = read.reduce((one, other) => (other.value > one.value ? other : one), first)
    return [
      {
        name,
        mean: all
          ? ciede2000(standard, meanLab(labs))
          : read.reduce((sum, { value }) => sum + value, 0) / read.length,
        worst: { skein: furthest.skein, value: furthest.value },
        mcdm: all ? mcdm(labs) : undefined,
        skeins: read.length,
      },
    ]
  })
}

export type ToStandard = {
  readonly answer: Verdict
  readonly because: 'off' | 'maybe off' | 'few' | 'missing' | 'copied' | 'next' | 'noise' | 'within'
  /** The batch that is furthest off: by its mean, or by its worst skein. */
  readonly worst: BatchFound
  /** With this confidence the next batch’s mean comes no further off. */
  readonly nextUpTo: number | undefined
}

/**
 * Do batches of one way come out like the standard? One that is off, even with the measuring error taken off it, is enough
 * to say no. Yes takes three batches or more, all within the tolerance; by their means also the limit of the next batch.
 *
 * @param each       The mean colour of each batch, or every skein of it.
 * @param tolerance  ΔE00; a batch that equals it is within.
 * @param error      Upper limit of the root mean square ΔE00 of unchanged skeins; 0 where it is not known.
 * @param missing    Skeins that are not lost and have no colour.
 * @throws RangeError without a batch
 *
 * @example
 * const batch = (name, mean) => ({ name, mean, worst: { skein: '1', value: mean }, mcdm: 0, skeins: 1 })
 * toStandard([batch('lot 1', 0.5), batch('lot 2', 0.3), batch('lot 3', 0.5)], { each: 'mean', tolerance: 2, confidence: 0.95, error: 0, missing: 0, noiseStops: false }) // { answer: 'holds', because: 'within', nextUpTo: 0.8227 }
 */
export function toStandard(
  batches: readonly BatchFound[],
  {
    each,
    tolerance,
    confidence,
    error,
    missing,
    noiseStops,
  }: {
    readonly each: 'mean' | 'every'
    readonly tolerance: number
    readonly confidence: number
    readonly error: number
    readonly missing: number
    readonly noiseStops: boolean
  },
): ToStandard {
  const [first] = batches
  if (!first) throw new RangeError('there is no batch to compare')
  const offOf = (batch: BatchFound) => (each === 'mean' ? batch.mean : batch.worst.value)
  const worst = batches.reduce((one, other) => (offOf(other) > offOf(one) ? other : one), first)
  const means = batches.map(({ mean }) => mean)
  const next = predictionLimits(means, { confidence })
  const nextUpTo = 'unavailable' in next ? undefined : next.upper
  const found = (answer: Verdict, because: ToStandard['because']) => ({ answer, because, worst, nextUpTo })
  if (netOfNoise(offOf(worst), error) > tolerance) return found('does-not-hold', 'off')
  if (offOf(worst) > tolerance) return found('not-settled', 'maybe off')
  if (batches.length < fewestBatches) return found('not-settled', 'few')
  if (missing > 0) return found('not-settled', 'missing')
  if (each === 'mean') {
    if ('unavailable' in next || next.sd <= 1e-9 * Math.max(...means)) return found('not-settled', 'copied')
    if (!(next.upper < tolerance)) return found('not-settled', 'next')
  }
  if (noiseStops) return found('not-settled', 'noise')
  return found('holds', 'within')
}
