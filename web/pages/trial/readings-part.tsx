import { useState } from 'preact/hooks'
import { csvOf } from '#web/api/table.ts'
import { PasteTable } from '#web/pages/trial/readings/paste-table.tsx'
import { ReadSkein } from '#web/pages/trial/readings/read-skein.tsx'
import { ReadingsList } from '#web/pages/trial/readings/readings-list.tsx'
import { useReadings } from '#web/pages/trial/readings/readings-loaded.ts'
import type { TrialPartProps } from '#web/pages/trial/trial-parts.ts'
import { Section } from '#web/parts/section.tsx'
import { WhenLoaded } from '#web/parts/when-loaded.tsx'

/** The readings of a trial: a table pasted, a skein read, and what was read so far. */
export function ReadingsPart({ trial, factors, again }: TrialPartProps) {
  const [mending, setMending] = useState(false)
  const loaded = useReadings(trial.id)
  const changed = (): void => {
    loaded.again()
    again()
  }
  return (
    <div class="stack-wide">
      <PasteTable trialId={trial.id} factors={factors} onKept={changed} onMending={setMending} />
      {mending ? null : (
        <WhenLoaded loaded={loaded}>
          {(seen) => (
            <>
              <Section
                title="Read a skein"
                says="One visit to one skein: one to five spots of L*, a* and b*."
              >
                <ReadSkein trialId={trial.id} seen={seen} onKept={changed} />
              </Section>
              <Section
                title="What was read so far"
                aside={
                  seen.readings.items.length === 0 ? undefined : (
                    <a href={csvOf(trial.id)} download>
                      save as CSV
                    </a>
                  )
                }
              >
                {seen.readings.items.length === 0 ? (
                  <p>No readings yet. Paste a table, or read the first skein.</p>
                ) : (
                  <ReadingsList trialId={trial.id} seen={seen} onKept={changed} />
                )}
              </Section>
            </>
          )}
        </WhenLoaded>
      )}
    </div>
  )
}
