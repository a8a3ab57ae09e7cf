import type { Instrument } from '#api/contract/instrument.ts'
import type { Doubt } from '#api/contract/one-or-many.ts'
import type { Reading } from '#api/contract/reading.ts'
import type { Sitting } from '#api/contract/sitting.ts'
import type { Skein } from '#api/contract/skein.ts'
import { ask } from './client.ts'

/** A page of a list; `next` is the `after` of the page that follows. */
export type Page<Item> = { readonly items: readonly Item[]; readonly next: string | null }

const page = (after: string | undefined, limit = 100) =>
  `limit=${limit}${after === undefined ? '' : `&after=${after}`}`

export const readingsOf = (trialId: string, after?: string, signal?: AbortSignal): Promise<Page<Reading>> =>
  ask(`/api/trials/${trialId}/readings?${page(after)}`, signal ? { signal } : {})

/** Up to 500; a trial with more is read by table. */
export const skeinsOf = (trialId: string, signal?: AbortSignal): Promise<Page<Skein>> =>
  ask(`/api/trials/${trialId}/skeins?${page(undefined, 500)}`, signal ? { signal } : {})

export const skeinOf = (id: string, signal?: AbortSignal): Promise<Skein> =>
  ask(`/api/skeins/${id}`, signal ? { signal } : {})

/** Those of the trial and the shared ones. */
export const sittingsOf = (trialId: string, signal?: AbortSignal): Promise<Page<Sitting>> =>
  ask(`/api/sittings?trialId=${trialId}&${page(undefined, 500)}`, signal ? { signal } : {})

export const instrumentsOf = async (signal?: AbortSignal): Promise<readonly Instrument[]> =>
  (await ask<Page<Instrument>>(`/api/instruments?${page(undefined)}`, signal ? { signal } : {})).items

export type SittingSent = Pick<Sitting, 'trialId' | 'method' | 'label'> & {
  readonly instrumentId?: string | null
}
export const addSitting = (sitting: SittingSent): Promise<Sitting> => ask('/api/sittings', { body: sitting })

/** Figures go as they were typed: the API reads “12,5” and “12.5” alike. */
export type SpotSent = { readonly l: string; readonly a: string; readonly b: string }
export type ReadingSent = {
  readonly skeinId: string
  readonly sittingId: string
  readonly spots: readonly SpotSent[]
  readonly wet: boolean
  readonly wear?: Readonly<Record<string, number>>
  readonly supersedesId?: string
  readonly reason?: string
}
export type ReadingKept = Reading & { readonly doubts: readonly Doubt[] }
export const addReading = (trialId: string, reading: ReadingSent): Promise<ReadingKept> =>
  ask(`/api/trials/${trialId}/readings`, { body: reading })

export const addSkein = (trialId: string, code: string): Promise<Skein> =>
  ask(`/api/trials/${trialId}/skeins`, { body: { code, status: 'done' } })
