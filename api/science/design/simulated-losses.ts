import type { SeededRandom } from './seeded-random.ts'

/** What is true of a plan, as far as it can be guessed: the world in which the plan is tried. */
export type TrueLosses = {
  /** True loss of the reference, ΔE00. */
  readonly reference: number
  /** True extra loss of each level over the reference, from the one next to it downwards. */
  readonly extras: readonly number[]
  /** SD between packets of one level, ΔE00; a function of the loss where those that lose more also vary more. */
  readonly sd: number | ((loss: number) => number)
  /** SD that a session gives to all its packets alike; no loss, no spread. */
  readonly sdSession?: number | ((loss: number) => number) | undefined
  /** SD of one reading (mean of its spots) on each of L*, a*, b*; before and after are both read. */
  readonly noiseSd: number
  /** Chance that a skein is lost, 0–1. */
  readonly lost?: number | undefined
}

/**
 * Fills one made-up trial: measured losses, level by level, session by session, the reference first; NaN is lost.
 *
 * A skein's colour moves by its true loss; noise shakes all three axes of both readings, and what is measured is
 * the length of the whole. That is why noise makes an unchanged skein look changed and hardly lengthens a large change.
 *
 * @example
 * const noChance = { whole: () => 0, uniform: () => 0.5, below: () => 0, normal: () => 0 }
 * [...simulatedLosses({ reference: 1, extras: [0.5], sd: 0.3, noiseSd: 0.1 }, { sessions: 2, random: noChance })] // [1, 1, 1.5, 1.5]
 */
export function simulatedLosses(
  truth: TrueLosses,
  {
    sessions,
    random,
    into = new Float64Array((truth.extras.length + 1) * sessions),
  }: { readonly sessions: number; readonly random: SeededRandom; readonly into?: Float64Array },
): Float64Array {
  const shake = truth.noiseSd * Math.SQRT2
  const lost = truth.lost ?? 0
  for (let session = 0; session < sessions; session++) {
    const pull = truth.sdSession === undefined ? 0 : random.normal()
    for (let level = 0; level <= truth.extras.length; level++) {
      const mean = truth.reference + (level === 0 ? 0 : (truth.extras[level - 1] ?? 0))
      let loss = mean + at(truth.sd, mean) * random.normal()
      if (truth.sdSession !== undefined) loss += at(truth.sdSession, mean) * pull
      let measured = Math.abs(loss)
      if (shake > 0) {
        const along = loss + shake * random.normal()
        const across = shake * random.normal()
        const beside = shake * random.normal()
        measured = Math.sqrt(along * along + across * across + beside * beside)
      }
      into[level * sessions + session] = lost > 0 && random.uniform() < lost ? Number.NaN : measured
    }
  }
  return into
}

/**
 * What unchanged skeins show with such a noise: the mean ("floor") and the root mean square of the length of a
 * difference between two readings, 2.257 and 2.449 times the SD of a reading on one axis.
 *
 * @see The length of three normal axes has Maxwell's distribution: mean 2·√(2/π)·s, mean square 3·s², here with s = √2·SD.
 *
 * @example
 * noiseOfSd(0.3) // { floor: 0.677, rms: 0.735 }
 */
export function noiseOfSd(sd: number): { readonly floor: number; readonly rms: number } {
  return { floor: 4 * sd * Math.sqrt(1 / Math.PI), rms: sd * Math.sqrt(6) }
}

function at(sd: number | ((loss: number) => number), loss: number): number {
  return typeof sd === 'number' ? sd : sd(loss)
}
