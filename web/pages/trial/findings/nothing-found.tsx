import type { Finding } from '#api/contract/finding.ts'
import { LinkButton } from '#web/parts/button.tsx'
import { EmptyState } from '#web/parts/empty-state.tsx'

/** Before the first reading: what is so, and where to begin. */
export function NothingFound({ finding }: { readonly finding: Finding }) {
  return (
    <EmptyState
      title={<h2>No readings yet</h2>}
      buttons={
        <>
          <LinkButton kind="do" href={`/trials/${finding.trialId}/readings`}>
            Go to the readings
          </LinkButton>
          <LinkButton href={`/trials/${finding.trialId}/plan`}>Look at the plan</LinkButton>
        </>
      }
    >
      Paste a table, or read the first skein. Findings begin with the first after-reading.
    </EmptyState>
  )
}
