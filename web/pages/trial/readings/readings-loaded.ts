import type { Reading } from '#api/contract/reading.ts'
import type { Sitting } from '#api/contract/sitting.ts'
import type { Skein } from '#api/contract/skein.ts'
import { type Page, readingsOf, sittingsOf, skeinsOf } from '#web/api/readings.ts'
import { type Loaded, useLoaded } from '#web/state/loaded.ts'

/** What stands in a trial to be read, and what was read: the first page of each. */
export type ReadingsSeen = {
  readonly readings: Page<Reading>
  readonly skeins: Page<Skein>
  readonly sittings: Page<Sitting>
}

export function useReadings(trialId: string): Loaded<ReadingsSeen> {
  return useLoaded(trialId, async (signal) => {
    const [readings, skeins, sittings] = await Promise.all([
      readingsOf(trialId, undefined, signal),
      skeinsOf(trialId, signal),
      sittingsOf(trialId, signal),
    ])
    return { readings, skeins, sittings }
  })
}
