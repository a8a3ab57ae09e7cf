import type { DeclaredVerdict } from '#api/contract/declared-verdict.ts'
import type { Finding } from '#api/contract/finding.ts'
import { ask } from '#web/api/client.ts'

/** What a trial has found, worked out now; where a second factor splits it, within one of its levels. */
export const findingOf = (
  trialId: string,
  within: string | undefined,
  signal?: AbortSignal,
): Promise<Finding> =>
  ask<Finding>(
    `/api/trials/${trialId}/findings${within === undefined ? '' : `?within=${encodeURIComponent(within)}`}`,
    signal ? { signal } : {},
  )

/** Every verdict that was recorded, first look first. */
export const verdictsOf = async (
  trialId: string,
  signal?: AbortSignal,
): Promise<readonly DeclaredVerdict[]> =>
  (
    await ask<{ items: readonly DeclaredVerdict[] }>(
      `/api/trials/${trialId}/verdicts`,
      signal ? { signal } : {},
    )
  ).items

/** Records the verdict for good, of all parts together or of one. */
export const recordVerdict = (trialId: string, within: string | undefined): Promise<DeclaredVerdict> =>
  ask<DeclaredVerdict>(`/api/trials/${trialId}/verdicts`, { method: 'POST', body: { within } })
