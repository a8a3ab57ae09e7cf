import { wearKey } from '#api/contract/wear.ts'
import type { Lab } from '#api/science/colour/lab.ts'
import { meanLab } from '#api/science/colour/mean-colour.ts'
import { groupBy } from '#api/science/group-by.ts'
import type { Asked } from './asked.ts'
import { treatedSkeins } from './judged-rows.ts'

/** A skein of a batch: its colour where it was read, or what it was entered to be from the standard, in ΔE00. */
export type BatchSkein = {
  readonly code: string
  readonly lab: Lab | undefined
  readonly entered: number | undefined
  readonly lost: string | undefined
}

/** Yarn from one dye bath. */
export type BatchRead = { readonly name: string; readonly skeins: readonly BatchSkein[] }

/** The batches of each level, by the bath that they were dyed in, in the order in which they were made. */
export function batchesOfWays(asked: Asked): ReadonlyMap<string, readonly BatchRead[]> {
  const { trial, condition, factor } = asked
  const { record, histories } = trial
  const colours = coloursAt(asked)
  const key = wearKey(condition.wear)
  const entered = new Map(
    record.results.flatMap((it) =>
      it.kind === 'dE00' && it.basis === 'standard' && it.wearKey === key
        ? [[it.skeinId, it.value] as const]
        : [],
    ),
  )
  const rows = treatedSkeins(asked).map(({ skein, level }) => {
    const stay = histories.stayAt(skein, 'dye') ?? histories.stayAt(skein, factor.stage)
    const vesselLost = stay?.vessel.status === 'lost' ? (stay.vessel.lostReason ?? noReason) : undefined
    return {
      level: level.id,
      batch: stay?.vessel.id ?? skein.id,
      name: stay?.vessel.label ?? skein.code,
      skein: {
        code: skein.code,
        lab: colours.get(skein.id),
        entered: entered.get(skein.id),
        lost: skein.status === 'lost' ? (skein.lostReason ?? noReason) : vesselLost,
      },
    }
  })
  return new Map(
    [...groupBy(rows, (row) => row.level)].map(([level, mine]) => [
      level,
      [...groupBy(mine, (row) => row.batch).values()].map((batch) => ({
        name: batch[0]!.name,
        skeins: batch.map((row) => row.skein),
      })),
    ]),
  )
}

const noReason = 'no reason given'

/** The mean colour of the skeins that were kept as the standard; undefined where none of them was read. */
export function keptStandard(asked: Asked): Lab | undefined {
  const { trial, stratum } = asked
  const kept = trial.record.skeins.filter(
    (skein) =>
      skein.role === 'standard' &&
      stratum.parts.every(({ factor, level }) => {
        const own = trial.histories.levelOf(skein, factor)
        return own === undefined || own === level.id
      }),
  )
  const ids = new Set(kept.map(({ id }) => id))
  const untouched = trial.record.colours.filter((it) => ids.has(it.skeinId) && wearKey(it.wear) === '')
  return untouched.length === 0 ? undefined : meanLab(untouched.map(({ l, a, b }) => ({ L: l, a, b })))
}

function coloursAt({ trial, condition }: Asked): ReadonlyMap<string, Lab> {
  const key = wearKey(condition.wear)
  return new Map(
    trial.record.colours.flatMap((it) =>
      wearKey(it.wear) === key ? [[it.skeinId, { L: it.l, a: it.a, b: it.b }] as const] : [],
    ),
  )
}
