import { wearKey } from '#api/contract/wear.ts'
import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import type { Lab } from '#api/science/colour/lab.ts'
import { meanLab } from '#api/science/colour/mean-colour.ts'
import type { ReadingSeen, SkeinRecord } from '#db/trial-record.ts'
import type { Asked } from './asked.ts'

/**
 * How far an open half stands from the covered half of its skein, ΔE00: as it was worked out or entered, else from
 * readings of both in the same sittings (means of L*, a*, b* first). Undefined where they were never read together.
 */
export function halvesApart(
  { trial, condition }: Pick<Asked, 'trial' | 'condition'>,
  open: SkeinRecord,
): number | undefined {
  const key = wearKey(condition.wear)
  const worked = trial
    .resultsOf(open.id)
    .find((it) => it.kind === 'dE00' && it.basis === 'covered' && it.wearKey === key)
  if (worked) return worked.value
  const { skeins, places, readings } = trial.record
  const covered = new Set(places.filter((place) => place.covered).map((place) => place.skeinId))
  const others = new Set(
    skeins
      .filter((it) => it.cutFromId !== null && it.cutFromId === open.cutFromId && covered.has(it.id))
      .map((it) => it.id),
  )
  const dry = readings.filter((it) => !it.wet)
  const own = dry.filter((it) => it.skeinId === open.id && wearKey(it.wear) === key)
  const theirs = dry.filter((it) => others.has(it.skeinId))
  const sittings = new Set(own.map((it) => it.sittingId))
  const together = new Set(theirs.map((it) => it.sittingId).filter((id) => sittings.has(id)))
  if (together.size === 0) return undefined
  const colourOf = (all: readonly ReadingSeen[]): Lab =>
    meanLab(
      all
        .filter((it) => together.has(it.sittingId))
        .map(({ meanL, meanA, meanB }) => ({ L: meanL, a: meanA, b: meanB })),
    )
  return ciede2000(colourOf(theirs), colourOf(own))
}
