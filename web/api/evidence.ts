import type { DraftSheet, EvidenceSheet } from '#api/contract/evidence.ts'
import { ask } from '#web/api/client.ts'

/** The sheet of a trial as it stands now; where a second factor splits it, of one of its levels. */
export const draftSheetOf = (
  trialId: string,
  within: string | undefined,
  signal?: AbortSignal,
): Promise<DraftSheet> =>
  ask<DraftSheet>(
    `/api/trials/${trialId}/evidence-sheets/draft${within === undefined ? '' : `?within=${encodeURIComponent(within)}`}`,
    signal ? { signal } : {},
  )

/** The published sheets of a trial, newest first. */
export const sheetsOf = async (trialId: string, signal?: AbortSignal): Promise<readonly EvidenceSheet[]> =>
  (
    await ask<{ items: readonly EvidenceSheet[] }>(
      `/api/trials/${trialId}/evidence-sheets`,
      signal ? { signal } : {},
    )
  ).items

/** Publishes the sheet of a recorded verdict: it never changes again. */
export const publishSheet = (trialId: string, within: string | undefined): Promise<EvidenceSheet> =>
  ask<EvidenceSheet>(`/api/trials/${trialId}/evidence-sheets`, { method: 'POST', body: { within } })
