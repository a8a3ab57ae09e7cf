import './findings/findings.css'
import { useEffect, useRef } from 'preact/hooks'
import { useLocation } from 'preact-iso'
import { findingOf, verdictsOf } from '#web/api/findings.ts'
import { FindingView } from '#web/pages/trial/findings/finding-view.tsx'
import { withinQuery } from '#web/pages/trial/findings/finding-words.ts'
import { NothingFound } from '#web/pages/trial/findings/nothing-found.tsx'
import type { TrialPartProps } from '#web/pages/trial/trial-parts.ts'
import { WhenLoaded } from '#web/parts/when-loaded.tsx'
import { useLoaded } from '#web/state/loaded.ts'

/** What a trial found: the answer first, then the pictures, then every skein, then how it was worked out. */
export function FindingsPart({ trial }: TrialPartProps) {
  const { query, route } = useLocation()
  const within = query.within === undefined || query.within === '' ? undefined : query.within
  const loaded = useLoaded(`findings of ${trial.id}`, async (signal) => {
    const [finding, recorded] = await Promise.all([
      findingOf(trial.id, within, signal),
      verdictsOf(trial.id, signal),
    ])
    return { finding, recorded }
  })
  // Another part is read while the one before still stands, so that the choice keeps its place.
  const shown = useRef(within)
  useEffect(() => {
    if (shown.current !== within) loaded.again()
    shown.current = within
  }, [within, loaded.again])
  return (
    <WhenLoaded loaded={loaded}>
      {({ finding, recorded }) =>
        finding.counts.rows === 0 ? (
          <NothingFound finding={finding} />
        ) : (
          <FindingView
            finding={finding}
            recorded={recorded}
            again={loaded.again}
            within={within}
            lookWithin={(part) => route(`/trials/${trial.id}/findings${withinQuery(part)}`, true)}
          />
        )
      }
    </WhenLoaded>
  )
}
