import './start-page.css'
import { useRef, useState } from 'preact/hooks'
import { useLocation } from 'preact-iso'
import { benchOfPattern } from '#api/contract/bench-of-pattern.ts'
import { type PatternName, patternPlan, patternPlans } from '#api/contract/patterns.ts'
import type { Trial } from '#api/contract/trial.ts'
import { faultsAt, Refused } from '#web/api/client.ts'
import { addFactor, changeTrial, startTrial } from '#web/api/trials.ts'
import { Choice } from '#web/form/choice.tsx'
import { Field } from '#web/form/field.tsx'
import { draftOfPattern, sentFactor } from '#web/pages/trial/factor-draft.ts'
import { FactorForm } from '#web/pages/trial/factor-form.tsx'
import { Button } from '#web/parts/button.tsx'
import { Note } from '#web/parts/note.tsx'
import { PageTitle } from '#web/parts/page-title.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'
import { Section } from '#web/parts/section.tsx'
import { newId } from '#web/state/new-id.ts'

const options = patternPlans.map(({ pattern, name }) => ({ value: pattern, words: name }))

/** Start a trial: the question, what kind of trial answers it, and what is varied. The plan comes next. */
export function StartPage() {
  const { query, route } = useLocation()
  const first = patternPlan(query.pattern ?? 'own')
  const [pattern, setPattern] = useState<PatternName>(first.pattern)
  const [question, setQuestion] = useState(first.question)
  const [title, setTitle] = useState('')
  const [expectation, setExpectation] = useState('')
  const [factor, setFactor] = useState(() => draftOfPattern(first.pattern))
  const [refused, setRefused] = useState<unknown>()
  const [busy, setBusy] = useState(false)
  // Chosen once: a second press sends the same trial, not another one.
  const id = useRef(newId())
  const kept = useRef<Trial | undefined>(undefined)
  const plan = patternPlan(pattern)

  const choose = (chosen: string): void => {
    const next = patternPlan(chosen)
    // What was not touched follows the pattern; what was typed stays.
    if (question === plan.question) setQuestion(next.question)
    if (JSON.stringify(factor) === JSON.stringify(draftOfPattern(pattern)))
      setFactor(draftOfPattern(next.pattern))
    setPattern(next.pattern)
  }
  const start = async (): Promise<void> => {
    setBusy(true)
    setRefused(undefined)
    const trial = {
      title: (title.trim() === '' ? question : title).trim().slice(0, 200),
      question: question.trim(),
      expectation: expectation.trim() === '' ? null : expectation.trim(),
      pattern,
      block: plan.block,
    }
    try {
      kept.current = kept.current
        ? await changeTrial(kept.current, trial)
        : await startTrial({ ...trial, id: id.current })
      await addFactor(id.current, sentFactor(factor))
      route(`/trials/${id.current}/plan`)
    } catch (thrown) {
      setRefused(thrown)
      setBusy(false)
    }
  }
  const faultOf = (pointer: string) => faultsAt(refused, pointer).map((detail) => ({ detail }))
  return (
    <div class="stack-wide">
      <PageTitle>Start a trial</PageTitle>
      <form
        class="body-and-margin"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          void start()
        }}
      >
        <div class="stack-wide">
          <Section title="The question">
            <div class="stack">
              <Choice
                name="pattern"
                label="What kind of trial"
                help={plan.says}
                options={options}
                value={pattern}
                onChoose={choose}
              />
              <Field
                name="question"
                label="Your question"
                help="As you would ask another dyer."
                value={question}
                onInput={setQuestion}
                faults={faultOf('#/question')}
                required
              />
              <div class="start-pair">
                <Field
                  name="title"
                  label="A short name"
                  help="For lists and tags; blank: the question."
                  value={title}
                  onInput={setTitle}
                  faults={faultOf('#/title')}
                />
                <Field
                  name="expectation"
                  label="What you expect"
                  help="Written down before, so that you can be surprised."
                  value={expectation}
                  onInput={setExpectation}
                  faults={faultOf('#/expectation')}
                />
              </div>
            </div>
          </Section>
          <Section title="What is varied">
            <FactorForm
              draft={factor}
              onChange={setFactor}
              faults={refused instanceof Refused ? refused.faults : []}
            />
          </Section>
          <div class="stack">
            <ProblemNote refused={refused} />
            <div class="row">
              <Button kind="do" type="submit" busy={busy ? 'Starting …' : undefined}>
                Start this trial
              </Button>
            </div>
          </div>
        </div>
        <aside class="stack" aria-label="What this trial takes">
          <Note title={plan.name}>
            <p>{takes(pattern, factor.stage)}</p>
            <p>All of it can be changed on the plan, which comes next. Nothing is dyed yet.</p>
          </Note>
          {cautions[pattern] === undefined ? null : (
            <Note title="Take care">
              <p>{cautions[pattern]}</p>
            </Note>
          )}
        </aside>
      </form>
    </div>
  )
}

function takes(pattern: PatternName, stage: Parameters<typeof benchOfPattern>[1]): string {
  const { sessions, session, vessel, given } = benchOfPattern(pattern, stage)
  const number = `${sessions} ${sessions === 1 ? session.one : session.many}`
  return given === 'skein'
    ? `Usually ${number}, each ${vessel.one} holding every level.`
    : `Usually ${number}, one ${vessel.one} for each level in each of them. Never a claim from fewer than 3.`
}

const steam =
  'Steam burns: lift the lid away from you, use tongs, let it cool before opening, never boil dry.'
const acid =
  'Household acid only, never with bleach; ventilate hot vinegar. Dye pots are never for food again.'
const cautions: Partial<Record<PatternName, string>> = {
  P1: steam,
  P2: acid,
  P3: 'A home test is not certified, and a claim covers only what was tested.',
  P7: `${acid} Supervise learners; keep powder wet or masked.`,
}
