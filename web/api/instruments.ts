import type { Instrument } from '#api/contract/instrument.ts'
import { ask } from '#web/api/client.ts'

/** Figures go as they were typed: the API reads “0,3” and “0.3” alike. */
export type NewInstrumentSent = Pick<Instrument, 'name' | 'method' | 'sdFrom'> & {
  readonly id: string
  readonly sdL: string
  readonly sdA: string
  readonly sdB: string
}

export const instrumentsOf = async (signal?: AbortSignal): Promise<readonly Instrument[]> =>
  (await ask<{ readonly items: readonly Instrument[] }>('/api/instruments', signal ? { signal } : {})).items

export const addInstrument = (instrument: NewInstrumentSent): Promise<Instrument> =>
  ask<Instrument>('/api/instruments', { body: instrument })

/** Keeps what a gauge check has found, over the version that was seen. */
export const keepNoise = (
  { id, version }: Pick<Instrument, 'id' | 'version'>,
  noise: Pick<Instrument, 'sdL' | 'sdA' | 'sdB' | 'checkedOn'>,
): Promise<Instrument> =>
  ask<Instrument>(`/api/instruments/${id}`, {
    method: 'PATCH',
    body: { ...noise, sdFrom: 'gauge check' },
    ifMatch: `"${version}"`,
  })

export const removeInstrument = ({ id, version }: Pick<Instrument, 'id' | 'version'>): Promise<void> =>
  ask<void>(`/api/instruments/${id}`, { method: 'DELETE', ifMatch: `"${version}"` })
