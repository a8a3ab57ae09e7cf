import type { DrawnPlan } from '#api/contract/plan.ts'
import type { Factor, Rule, Trial } from '#api/contract/trial.ts'

/** What every part of a trial is given: the trial as it is kept, and a way to read it again after a change. */
export type TrialPartProps = {
  readonly trial: Trial
  readonly factors: readonly Factor[]
  /** Every edition, oldest first. */
  readonly rules: readonly Rule[]
  readonly plan: DrawnPlan
  readonly again: () => void
}

export const partNames = ['plan', 'readings', 'findings', 'evidence'] as const
export type PartName = (typeof partNames)[number]

export const partLabels: Readonly<Record<PartName, string>> = {
  plan: 'Plan',
  readings: 'Readings',
  findings: 'Findings',
  evidence: 'Evidence',
}

/** The part that an address names; without one the findings, once there are results, else the plan. */
export function partOf(named: string | undefined, { results }: { readonly results: number }): PartName {
  const part = partNames.find((it) => it === named)
  return part ?? (results > 0 ? 'findings' : 'plan')
}
