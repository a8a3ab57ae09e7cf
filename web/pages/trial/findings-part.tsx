import type { TrialPartProps } from '#web/pages/trial/trial-parts.ts'
import { EmptyState } from '#web/parts/empty-state.tsx'

/** What a trial found. */
export function FindingsPart({ plan }: TrialPartProps) {
  return (
    <EmptyState title={<h2>{plan.results === 0 ? 'No readings yet' : 'Findings'}</h2>}>
      Findings begin with the first after-reading.
    </EmptyState>
  )
}
