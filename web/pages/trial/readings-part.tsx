import type { TrialPartProps } from '#web/pages/trial/trial-parts.ts'
import { EmptyState } from '#web/parts/empty-state.tsx'

/** The readings of a trial. */
export function ReadingsPart({ plan }: TrialPartProps) {
  return (
    <EmptyState title={<h2>{plan.results === 0 ? 'No readings yet' : 'Readings'}</h2>}>
      Paste a table, or read the first skein.
    </EmptyState>
  )
}
