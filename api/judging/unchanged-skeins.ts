import type { Lab } from '#api/science/colour/lab.ts'
import { meanLab } from '#api/science/colour/mean-colour.ts'
import { groupBy } from '#api/science/group-by.ts'
import type { Role, Wear } from '#db/tables.ts'
import type { ReadingSeen } from '#db/trial-record.ts'
import type { Condition } from './condition.ts'
import type { JudgedTrial } from './judged-trial.ts'
import { occasionsOf } from './occasions.ts'
import { commonestWay, isReadSo, type WayOfMeasuring, wayOfCondition } from './way-of-measuring.ts'

/** An unchanged skein with its colour on each occasion, in the order of time; placings of an occasion are one mean. */
export type UnchangedSkein = {
  readonly skeinId: string
  readonly role: Role
  readonly occasions: readonly Lab[]
  /** The names of those occasions (`occasionsOf`), in the same order. */
  readonly at: readonly string[]
}

/**
 * Twins whose colours were read on more than one occasion, in the way in which the judged skeins were read. Readings of
 * one sitting or day are no repeats, nor are places of one skein.
 */
export function unchangedSkeins(
  trial: JudgedTrial,
  condition: Pick<Condition, 'wear'>,
): readonly UnchangedSkein[] {
  const { skeins, readings } = trial.record
  const roles = new Map(skeins.map((it) => [it.id, it.role]))
  const unchanged = readings.filter((it) => {
    const role = roles.get(it.skeinId)
    return !it.wet && role !== undefined && isUnchanged(role, it.wear, condition.wear)
  })
  const way = wayOfCondition(trial, condition) ?? commonestWay(unchanged)
  if (!way) return []
  const occasionOf = occasionsOf(readings)
  const alike = unchanged.filter((it) => isReadSo(it, way))
  return [...groupBy(alike, (it) => it.skeinId)].flatMap(([skeinId, mine]) => {
    const colours = coloursByOccasion(mine, way, occasionOf)
    const role = roles.get(skeinId)
    if (colours.size < 2 || role === undefined) return []
    return [{ skeinId, role, occasions: [...colours.values()], at: [...colours.keys()] }]
  })
}

/** Nothing was done to it: a twin before any wear, a dark twin whatever its days in the dark. */
export function isUnchanged(role: Role, wear: Wear, judged: Wear): boolean {
  const axes = Object.keys(wear)
  if (role === 'twin') return axes.length === 0
  if (role !== 'dark twin') return false
  // On a light card the days of the card are entered for its dark twin too; it spent them in the dark.
  const ofLight = Object.keys(judged).some(isLight)
  return axes.every((axis) => axis === 'X0 days' || (ofLight && isLight(axis)))
}

const isLight = (axis: string): boolean => /^X\d/.test(axis)

function coloursByOccasion(
  readings: readonly ReadingSeen[],
  { placings }: WayOfMeasuring,
  occasionOf: (sittingId: string) => string,
): ReadonlyMap<string, Lab> {
  const time = (it: ReadingSeen) => new Date(it.takenAt ?? it.createdAt).getTime()
  const inOrder = [...readings].sort((a, b) => time(a) - time(b))
  // As many placings as the judged skeins had: a mean of more would have less error than theirs.
  return new Map(
    [...groupBy(inOrder, (it) => occasionOf(it.sittingId))].map(([occasion, mine]) => [
      occasion,
      meanLab(mine.slice(0, placings).map(({ meanL, meanA, meanB }) => ({ L: meanL, a: meanA, b: meanB }))),
    ]),
  )
}
