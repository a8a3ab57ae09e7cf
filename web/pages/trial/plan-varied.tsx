import './levels.css'
import { useState } from 'preact/hooks'
import type { Factor, Trial } from '#api/contract/trial.ts'
import { Refused } from '#web/api/client.ts'
import { addFactor, removeFactor } from '#web/api/trials.ts'
import { draftOf, draftOfPattern, sentFactor } from '#web/pages/trial/factor-draft.ts'
import { FactorForm } from '#web/pages/trial/factor-form.tsx'
import { hasReference } from '#web/pages/trial/held-against.ts'
import { Button } from '#web/parts/button.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'
import { Section } from '#web/parts/section.tsx'

export type PlanVariedProps = {
  readonly trial: Trial
  readonly factors: readonly Factor[]
  /** Once places are drawn the levels stay. */
  readonly drawn: boolean
  readonly again: () => void
}

/** What is varied, with the levels as boxes; they can be changed until the places are drawn. */
export function PlanVaried({ trial, factors, drawn, again }: PlanVariedProps) {
  const [changing, setChanging] = useState(false)
  const referred = hasReference(trial.pattern)
  const isReference = (level: Factor['levels'][number]) => referred && level.isReference
  if (changing || factors.length === 0) {
    return (
      <Section title="What is varied">
        <Change trial={trial} factor={factors[0]} leave={() => setChanging(false)} again={again} />
      </Section>
    )
  }
  return (
    <Section
      title="What is varied"
      aside={
        drawn ? undefined : (
          <Button kind="plain" small name="Change what is varied" onPress={() => setChanging(true)}>
            Change
          </Button>
        )
      }
    >
      <div class="stack">
        {factors.map((factor) => (
          <div key={factor.id}>
            <p>
              <strong>{capital(factor.label)}</strong>
              {factor.unit ? <span class="soft">, {factor.unit}</span> : null}
            </p>
            <ul class="level-row plain-list">
              {factor.levels.map((level) => (
                <li
                  key={level.id}
                  class={`level-box level-box-shown${isReference(level) ? ' level-box-reference' : ''}`}
                >
                  {level.label}
                  {isReference(level) ? <small> reference</small> : null}
                </li>
              ))}
            </ul>
          </div>
        ))}
      </div>
    </Section>
  )
}

function Change({
  trial,
  factor,
  leave,
  again,
}: {
  readonly trial: Trial
  readonly factor: Factor | undefined
  readonly leave: () => void
  readonly again: () => void
}) {
  const [draft, setDraft] = useState(() => (factor ? draftOf(factor) : draftOfPattern(trial.pattern)))
  const [refused, setRefused] = useState<unknown>()
  const [busy, setBusy] = useState(false)
  const keep = async (): Promise<void> => {
    setBusy(true)
    setRefused(undefined)
    try {
      // The new one first: if it is refused, the old one still stands. One key stands once, so a same key goes first.
      const sent = sentFactor(draft)
      if (factor && factor.key === sent.key) {
        await removeFactor(factor)
        try {
          await addFactor(trial.id, sent)
        } catch (thrown) {
          await addFactor(trial.id, sentFactor(draftOf(factor)))
          throw thrown
        }
      } else {
        await addFactor(trial.id, sent)
        if (factor) await removeFactor(factor)
      }
      leave()
    } catch (thrown) {
      setRefused(thrown)
    }
    setBusy(false)
    again()
  }
  return (
    <form
      class="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        void keep()
      }}
    >
      <FactorForm
        draft={draft}
        onChange={setDraft}
        faults={refused instanceof Refused ? refused.faults : []}
      />
      <ProblemNote refused={refused} />
      <div class="row">
        <Button type="submit" busy={busy ? 'Keeping …' : undefined}>
          Keep these levels
        </Button>
        {factor ? <Button onPress={leave}>Leave them as they were</Button> : null}
      </div>
    </form>
  )
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
