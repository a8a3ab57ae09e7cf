import { wearKey } from '#api/contract/wear-words.ts'
import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import type { Lab } from '#api/science/colour/lab.ts'
import { meanLab } from '#api/science/colour/mean-colour.ts'
import type { Condition } from './condition.ts'
import type { JudgedTrial } from './judged-trial.ts'
import { occasionsOf } from './occasions.ts'
import { type UnchangedSkein, unchangedSkeins } from './unchanged-skeins.ts'

/** What unchanged skeins moved together between their first and their later readings. */
export type Drift = {
  readonly shift: Lab
  /** Of how many twins it is the mean. */
  readonly twins: number
}

/** With fewer twins their shift cannot be told from the error of single readings, and stays in it. */
const fewestTwins = 4

/**
 * The drift of the measuring over a trial, where four or more twins tell of it: twins that were read on the occasions on
 * which the judged skeins were read before and after. What a meter did on other days says nothing of those.
 */
export function driftOf(trial: JudgedTrial, condition: Pick<Condition, 'wear'>): Drift | undefined {
  const { skeins, readings } = trial.record
  const treated = new Set(
    skeins.flatMap(({ id, role }) => (role === 'treated' || role === 'bled' ? [id] : [])),
  )
  const occasionOf = occasionsOf(readings)
  const after = wearKey(condition.wear)
  const occasionsAt = (key: string) =>
    new Set(
      readings.flatMap((it) =>
        treated.has(it.skeinId) && wearKey(it.wear) === key ? [occasionOf(it.sittingId)] : [],
      ),
    )
  const [before, worn] = [occasionsAt(''), occasionsAt(after)]
  return driftOfSkeins(
    unchangedSkeins(trial, condition).flatMap(
      ({ occasions: [first, ...later], at: [began = '', ...names] }) => {
        const together = later.filter((_, place) => worn.has(names[place] ?? ''))
        return first && before.has(began) && together.length > 0 ? [{ occasions: [first, ...together] }] : []
      },
    ),
  )
}

/**
 * The mean shift of four or more unchanged skeins: of each its later readings’ mean less its first.
 *
 * @example
 * const twin = (later) => ({ occasions: [{ L: 50, a: 0, b: 0 }, { L: later, a: 0, b: 0 }] })
 * driftOfSkeins([twin(50.2), twin(50.4), twin(50.3), twin(50.3)]) // { shift: { L: 0.3, a: 0, b: 0 }, twins: 4 }
 */
export function driftOfSkeins(skeins: readonly Pick<UnchangedSkein, 'occasions'>[]): Drift | undefined {
  const shifts = skeins.flatMap(({ occasions: [first, ...later] }) =>
    first && later.length > 0 ? [difference(meanLab(later), first)] : [],
  )
  if (shifts.length < fewestTwins) return undefined
  return { shift: meanLab(shifts), twins: shifts.length }
}

/**
 * A loss with the drift taken off: ΔE00 from where the skein began to where it would have been read without drift.
 *
 * @param after  Its colour after the wear, as read.
 * @param shift  From its beginning to `after`, an axis each.
 *
 * @example
 * lossWithoutDrift({ L: 52, a: 3, b: 0 }, { L: 2, a: 0.5, b: 0 }, { L: 2, a: 0.5, b: 0 }) // 0
 */
export function lossWithoutDrift(after: Lab, shift: Lab, drift: Lab): number {
  return ciede2000(difference(after, shift), difference(after, drift))
}

function difference(one: Lab, other: Lab): Lab {
  return { L: one.L - other.L, a: one.a - other.a, b: one.b - other.b }
}
