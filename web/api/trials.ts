import type { Factor, Rule, Trial } from '#api/contract/trial.ts'
import { ask } from '#web/api/client.ts'

/** Figures go as they were typed: the API reads “12,5” and “12.5” alike. */
type Typed = number | string

type TrialSent = Pick<Trial, 'title' | 'question' | 'expectation' | 'pattern' | 'block' | 'held'>
export type NewTrialSent = Partial<TrialSent> &
  Pick<TrialSent, 'title' | 'question'> & { readonly id?: string }
export type ChangedTrialSent = Partial<TrialSent> & {
  readonly seed?: number | null
  readonly archivedAt?: string | null
}
export type NewLevelSent = {
  readonly label: string
  readonly value?: Typed | null
  readonly isReference?: boolean
}
export type NewFactorSent = {
  readonly id?: string
  readonly key: string
  readonly stage?: Factor['stage']
  readonly kind?: Factor['kind']
  readonly ordered?: boolean
  readonly unit?: string | null
  readonly levels: readonly NewLevelSent[]
}
export type NewRuleSent = {
  readonly id?: string
  readonly conditions: readonly Rule['conditions'][number][]
  readonly method: Rule['method']
  readonly plannedSessions: Typed
  readonly confidence: Typed
  readonly reason?: string | null
}

type Items<Item> = { readonly items: readonly Item[] }

export const trialOf = (id: string, signal?: AbortSignal): Promise<Trial> =>
  ask<Trial>(`/api/trials/${id}`, signal ? { signal } : {})

/** Trials that are still open, oldest first; of very many the first page. */
export const openTrialsOf = async (): Promise<readonly Trial[]> =>
  (await ask<Items<Trial>>('/api/trials')).items.filter(({ archivedAt }) => archivedAt === null)

export const startTrial = (trial: NewTrialSent): Promise<Trial> => ask<Trial>('/api/trials', { body: trial })

/** Changes a trial that is still at the version that was seen. */
export const changeTrial = (
  { id, version }: Pick<Trial, 'id' | 'version'>,
  changes: ChangedTrialSent,
): Promise<Trial> =>
  ask<Trial>(`/api/trials/${id}`, { method: 'PATCH', body: changes, ifMatch: `"${version}"` })

export const factorsOf = async (trialId: string, signal?: AbortSignal): Promise<readonly Factor[]> =>
  (await ask<Items<Factor>>(`/api/trials/${trialId}/factors`, signal ? { signal } : {})).items

export const addFactor = (trialId: string, factor: NewFactorSent): Promise<Factor> =>
  ask<Factor>(`/api/trials/${trialId}/factors`, { body: factor })

export const removeFactor = ({ id, trialId, version }: Factor): Promise<void> =>
  ask<void>(`/api/trials/${trialId}/factors/${id}`, { method: 'DELETE', ifMatch: `"${version}"` })

export const rulesOf = async (trialId: string, signal?: AbortSignal): Promise<readonly Rule[]> =>
  (await ask<Items<Rule>>(`/api/trials/${trialId}/rules`, signal ? { signal } : {})).items

export const addRule = (trialId: string, rule: NewRuleSent): Promise<Rule> =>
  ask<Rule>(`/api/trials/${trialId}/rules`, { body: rule })

export const lockRule = (trialId: string, edition: number): Promise<Rule> =>
  ask<Rule>(`/api/trials/${trialId}/rules/${edition}/lock`, { method: 'POST' })
