import type { DrawnPlan, PlanTried } from '#api/contract/plan.ts'
import { ask } from '#web/api/client.ts'

export type BenchSent = {
  readonly sessions: number
  readonly vesselsPerLevel: number
  readonly skeinsPerVessel: number
  readonly seed?: number
}
export type TriedPlanSent = BenchSent & {
  readonly margin?: number
  readonly confidence?: number
  readonly sdOfDifferences?: number
  readonly noise?: number
  readonly trials?: number
}
export type DrawPlacesSent = BenchSent & { readonly twins?: boolean }

export const planOf = (trialId: string, signal?: AbortSignal): Promise<DrawnPlan> =>
  ask<DrawnPlan>(`/api/trials/${trialId}/plan`, signal ? { signal } : {})

/** Counts a plan and tries it; nothing is written. */
export const tryPlan = (trialId: string, plan: TriedPlanSent, signal?: AbortSignal): Promise<PlanTried> =>
  ask<PlanTried>(`/api/trials/${trialId}/plan`, { body: plan, ...(signal ? { signal } : {}) })

export const drawPlaces = (trialId: string, bench: DrawPlacesSent): Promise<DrawnPlan> =>
  ask<DrawnPlan>(`/api/trials/${trialId}/plan/draw`, { body: bench })
