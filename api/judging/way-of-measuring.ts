import { wearKey } from '#api/contract/wear.ts'
import { groupBy } from '#api/science/group-by.ts'
import type { Method } from '#db/tables.ts'
import type { ReadingSeen } from '#db/trial-record.ts'
import type { Condition } from './condition.ts'
import type { JudgedTrial } from './judged-trial.ts'

/** How a colour was read, as far as its error depends on it. */
export type WayOfMeasuring = {
  readonly method: Method
  readonly instrumentId: string | null
  readonly spotsN: number
  /** Readings of one skein in one sitting, each after taking it up anew. */
  readonly placings: number
}

/**
 * How most treated skeins were read for a condition: at its wear, else before any. Undefined where no reading was kept
 * (differences that were typed in).
 */
export function wayOfCondition(
  { record }: JudgedTrial,
  condition: Pick<Condition, 'wear'>,
): WayOfMeasuring | undefined {
  const treated = new Set(
    record.skeins.filter((it) => it.role === 'treated' || it.role === 'bled').map((it) => it.id),
  )
  const read = record.readings.filter((it) => !it.wet && treated.has(it.skeinId))
  const key = wearKey(condition.wear)
  const worn = read.filter((it) => wearKey(it.wear) === key)
  return commonestWay(worn.length > 0 ? worn : read)
}

/** The way in which most of these were read, with the usual number of placings. */
export function commonestWay(readings: readonly ReadingSeen[]): WayOfMeasuring | undefined {
  const first = commonest(readings, wayKey)
  if (!first) return undefined
  const alike = readings.filter((it) => wayKey(it) === wayKey(first))
  const visits = [...groupBy(alike, (it) => `${it.skeinId} ${it.sittingId}`).values()]
  const placings = commonest(visits, (it) => String(it.length))?.length ?? 1
  return { method: first.method, instrumentId: first.instrumentId, spotsN: first.spotsN, placings }
}

/** Whether a reading was taken in this way. */
export function isReadSo(
  reading: Pick<ReadingSeen, 'method' | 'instrumentId' | 'spotsN'>,
  way: WayOfMeasuring,
): boolean {
  return wayKey(reading) === wayKey(way)
}

function wayKey(it: Pick<ReadingSeen, 'method' | 'instrumentId' | 'spotsN'>): string {
  return JSON.stringify([it.method, it.instrumentId, it.spotsN])
}

function commonest<Thing>(things: readonly Thing[], keyOf: (thing: Thing) => string): Thing | undefined {
  let most: Thing[] = []
  for (const group of groupBy(things, keyOf).values()) if (group.length > most.length) most = group
  return most[0]
}
