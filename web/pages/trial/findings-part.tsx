import './findings/findings.css'
import { useEffect, useRef } from 'preact/hooks'
import { useLocation } from 'preact-iso'
import { findingOf, verdictsOf } from '#web/api/findings.ts'
import { FindingView } from '#web/pages/trial/findings/finding-view.tsx'
import { NothingFound } from '#web/pages/trial/findings/nothing-found.tsx'
import type { TrialPartProps } from '#web/pages/trial/trial-parts.ts'
import { WhenLoaded } from '#web/parts/when-loaded.tsx'
import { useLoaded } from '#web/state/loaded.ts'

/** What a trial found: the answer first, then the pictures, then every skein, then how it was worked out. */
export function FindingsPart({ trial }: TrialPartProps) {
  const { query, route } = useLocation()
  const within = query.within === undefined || query.within === '' ? undefined : query.within
  const loaded = useLoaded(`findings of ${trial.id}`, async (signal) => {
    const [finding, declared] = await Promise.all([
      findingOf(trial.id, within, signal),
      verdictsOf(trial.id, signal),
    ])
    return { finding, declared }
  })
  // Another level of the second factor is read while the one before still stands, so that the choice keeps its place.
  const shown = useRef(within)
  useEffect(() => {
    if (shown.current !== within) loaded.again()
    shown.current = within
  }, [within, loaded.again])
  return (
    <WhenLoaded loaded={loaded}>
      {({ finding, declared }) =>
        finding.counts.rows === 0 ? (
          <NothingFound finding={finding} />
        ) : (
          <FindingView
            finding={finding}
            declared={declared}
            again={loaded.again}
            within={within ?? finding.within?.levelId}
            lookWithin={(levelId) => route(`/trials/${trial.id}/findings?within=${levelId}`, true)}
          />
        )
      }
    </WhenLoaded>
  )
}
