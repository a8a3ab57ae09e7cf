import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import type { Lab } from '#api/science/colour/lab.ts'
import { meanLab } from '#api/science/colour/mean-colour.ts'
import { groupBy } from '#api/science/group-by.ts'
import type { TwinRecord } from '#db/trial-record.ts'
import type { Condition } from './condition.ts'
import { driftOfSkeins } from './drift.ts'
import type { JudgedTrial } from './judged-trial.ts'
import { occasionsOf } from './occasions.ts'
import { type NoiseSource, type PooledNoise, pooledNoise, sourceOfDifferences } from './pooled-noise.ts'
import { isUnchanged, type UnchangedSkein, unchangedSkeins } from './unchanged-skeins.ts'

export type NoiseOfTwins = PooledNoise & {
  readonly n: number
  readonly twins: number
  readonly dark: boolean
}

/**
 * What the twins of a trial tell of the measuring error: from their readings, else from differences that were entered.
 * How those were read is not known, so the two are not pooled.
 */
export function noiseOfTwins(
  trial: JudgedTrial,
  condition: Pick<Condition, 'wear'>,
): NoiseOfTwins | undefined {
  const read = unchangedSkeins(trial, condition)
  const roles = new Map(trial.record.skeins.map((it) => [it.id, it.role]))
  const entered = trial.record.twins.filter((it) => {
    const role = roles.get(it.skeinId)
    return it.shift === null && role !== undefined && isUnchanged(role, it.wear, condition.wear)
  })
  const differences = [...groupBy(entered, (it) => it.skeinId)].map(([skeinId, mine]) => ({
    skeinId,
    values: valuesByOccasion(mine),
  }))
  const isDark = ({ skeinId }: { skeinId: string }) => roles.get(skeinId) === 'dark twin'
  const ofReadings = pooledNoise([sourceOfReadings(read.map((it) => it.occasions))])
  if (ofReadings) {
    const n = read.reduce((sum, it) => sum + it.occasions.length - 1, 0)
    return { ...ofReadings, n, twins: read.length, dark: read.every(isDark) }
  }
  const ofDifferences = pooledNoise(differences.map((it) => sourceOfDifferences(it.values)))
  if (!ofDifferences) return undefined
  const n = differences.reduce((sum, it) => sum + it.values.length, 0)
  return { ...ofDifferences, n, twins: differences.length, dark: differences.every(isDark) }
}

/**
 * Twice the variance within skeins of the colour on an occasion, summed over the axes: what two readings of an
 * unchanged skein differ by, squared. Each reading beyond a skein’s first gives three degrees of freedom; a drift that
 * is taken off costs three.
 *
 * @example
 * const twin = (first, second) => [{ L: first, a: 0, b: 0 }, { L: second, a: 0, b: 0 }]
 * sourceOfReadings([twin(50, 50.4), twin(50, 49.7)]) // { meanSquare: 0.125, df: 6 }
 */
export function sourceOfReadings(skeins: readonly (readonly Lab[])[]): NoiseSource {
  const repeated = skeins.filter((it) => it.length > 1)
  const drift = driftOfSkeins(repeated.map((occasions): Pick<UnchangedSkein, 'occasions'> => ({ occasions })))
  const steady = repeated.map((labs) =>
    labs.map((lab, place) => (place > 0 ? without(lab, drift?.shift) : lab)),
  )
  let squares = 0
  for (const labs of steady) {
    const mean = meanLab(labs)
    for (const lab of labs) squares += ciede2000(mean, lab) ** 2
  }
  const repeats = repeated.reduce((sum, it) => sum + it.length - 1, 0) - (drift ? 1 : 0)
  return repeats > 0 ? { meanSquare: (2 * squares) / repeats, df: 3 * repeats } : { meanSquare: 0, df: 0 }
}

function without({ L, a, b }: Lab, drift: Lab = { L: 0, a: 0, b: 0 }): Lab {
  return { L: L - drift.L, a: a - drift.a, b: b - drift.b }
}

/** Differences of one skein, those of one sitting or day averaged; without a sitting each stands for itself. */
function valuesByOccasion(twins: readonly TwinRecord[]): number[] {
  const named = twins.map((it, place) => ({ ...it, sittingId: it.sittingId ?? `entered ${place}` }))
  const occasionOf = occasionsOf(named.map(({ sittingId, at }) => ({ sittingId, takenAt: at })))
  return [...groupBy(named, (it) => occasionOf(it.sittingId)).values()].map(
    (mine) => mine.reduce((sum, it) => sum + it.dE00, 0) / mine.length,
  )
}
