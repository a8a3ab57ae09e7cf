import '#web/parts/chip.css'
import './plan-held.css'
import { useState } from 'preact/hooks'
import { patternPlan } from '#api/contract/patterns.ts'
import type { Trial } from '#api/contract/trial.ts'
import { faultsAt } from '#web/api/client.ts'
import { changeTrial } from '#web/api/trials.ts'
import { Field } from '#web/form/field.tsx'
import { Button } from '#web/parts/button.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'
import { Section } from '#web/parts/section.tsx'

type Held = Trial['held'][number]

/** What is held the same in every session; it narrows what the answer holds for. */
export function PlanHeld({ trial, again }: { readonly trial: Trial; readonly again: () => void }) {
  const [adding, setAdding] = useState<{ key: string; value: string } | undefined>()
  const [refused, setRefused] = useState<unknown>()
  const [busy, setBusy] = useState(false)
  const named = new Set(trial.held.map(({ key }) => key.toLowerCase()))
  const missing = patternPlan(trial.pattern).held.filter((key) => !named.has(key))

  const keep = async (held: readonly Held[]): Promise<void> => {
    setBusy(true)
    setRefused(undefined)
    try {
      await changeTrial(trial, { held: [...held] })
      setAdding(undefined)
    } catch (thrown) {
      setRefused(thrown)
    }
    setBusy(false)
    again()
  }
  const place = trial.held.length
  const faultOf = (name: 'key' | 'value') =>
    faultsAt(refused, `#/held/${place}/${name}`).map((detail) => ({ detail }))
  return (
    <Section
      title="Held the same"
      says="The answer holds for this and no more: write down what stays as it is in every session."
    >
      <div class="stack">
        <ul class="chips plain-list">
          {trial.held.map(({ key, value }, at) => (
            <li key={key} class="chip plan-held">
              <span>
                <span class="soft">{key}</span> {value}
              </span>
              <button
                type="button"
                class="plan-held-remove"
                aria-label={`Take ${key} away`}
                onClick={() => void keep(trial.held.filter((_, other) => other !== at))}
              >
                <svg width="11" height="11" viewBox="0 0 12 12" aria-hidden="true">
                  <path d="M2 2L10 10M10 2L2 10" stroke="currentColor" stroke-width="1.75" />
                </svg>
              </button>
            </li>
          ))}
          {missing.map((key) => (
            <li key={key}>
              <button type="button" class="plan-held-ask" onClick={() => setAdding({ key, value: '' })}>
                {key} …
              </button>
            </li>
          ))}
          <li>
            <Button
              kind="plain"
              name="Add something held the same"
              onPress={() => setAdding({ key: '', value: '' })}
            >
              add
            </Button>
          </li>
        </ul>
        {adding === undefined ? (
          <ProblemNote refused={refused} />
        ) : (
          <form
            class="stack"
            noValidate
            onSubmit={(event) => {
              event.preventDefault()
              void keep([...trial.held, { key: adding.key.trim(), value: adding.value.trim() }])
            }}
          >
            <div class="fields">
              <Field
                name="key"
                label="What"
                value={adding.key}
                onInput={(key) => setAdding({ ...adding, key })}
                faults={faultOf('key')}
              />
              <Field
                name="value"
                label="Is always"
                value={adding.value}
                onInput={(value) => setAdding({ ...adding, value })}
                faults={faultOf('value')}
              />
            </div>
            <ProblemNote refused={refused} />
            <div class="row">
              <Button type="submit" busy={busy ? 'Keeping …' : undefined}>
                Add it
              </Button>
              <Button onPress={() => setAdding(undefined)}>Leave it</Button>
            </div>
          </form>
        )}
      </div>
    </Section>
  )
}
