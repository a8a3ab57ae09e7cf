import './plan-rule.css'
import { comparisons, isOrdinal, questionOf } from '#api/contract/question.ts'
import type { Rule } from '#api/contract/trial.ts'
import { wearAxes } from '#api/contract/wear-words.ts'
import { Refused } from '#web/api/client.ts'
import { Pick } from '#web/form/choice.tsx'
import { dayAndTime } from '#web/form/date-words.ts'
import { Field } from '#web/form/field.tsx'
import { askedAs, fieldOfPointer, type RuleDraft, type RuleField } from '#web/pages/trial/rule-draft.ts'
import { Button } from '#web/parts/button.tsx'
import { Sentence } from '#web/parts/delta-e.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'
import { Section } from '#web/parts/section.tsx'

export type PlanRuleProps = {
  readonly draft: RuleDraft
  readonly onChange: (draft: RuleDraft) => void
  /** Every edition, oldest first. */
  readonly rules: readonly Rule[]
  /** The form says something that no edition says yet. */
  readonly changed: boolean
  readonly plannedSessions: number | undefined
  readonly sessionWord: { readonly one: string; readonly many: string }
  readonly reason: string
  readonly onReason: (reason: string) => void
  readonly refused: unknown
  readonly busy: string | undefined
  readonly onKeep: () => void
}

const methods = [
  { value: 'paired', words: 'within each session (paired)' },
  { value: 'model', words: 'by a model, when the table has gaps' },
]

const protocolHelp: Readonly<Record<string, string>> = {
  W1: '20–25 °C, 15 min',
  W2: '40 °C, 30 min',
  W3: '40 °C, tumbled in a jar',
  W4: '30 °C, wool programme',
  W5: 'pressed damp, overnight',
  W6: '60 °C, 30 min; never a care claim',
}

/** How the answer will be judged: written before the first reading, kept in editions, one of them locked. */
export function PlanRule(props: PlanRuleProps) {
  const { draft, onChange, rules, changed, reason, onReason, refused, busy, onKeep } = props
  const faults = refused instanceof Refused ? refused.faults : []
  const next = (rules.at(-1)?.edition ?? 0) + 1
  const faultsOf = (field: RuleField) =>
    faults
      .filter(({ pointer }) => fieldOfPointer(draft, pointer)?.id === field.id)
      .map(({ detail }) => ({ detail }))
  const at = (pointer: string) =>
    faults.filter((it) => it.pointer === pointer).map(({ detail }) => ({ detail }))
  const axes = Object.keys(wearAxes) as (keyof typeof wearAxes)[]
  return (
    <Section title="The rule" id="rule">
      <form
        class="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          onKeep()
        }}
      >
        {draft.asked.map(({ key, condition, choice }) =>
          choice === undefined ? null : (
            <Pick
              key={key}
              name={`${key}/question`}
              label={choice.label}
              options={choice.options}
              value={questionOf(condition)}
              onChoose={(chosen) => {
                const option = choice.options.find(({ value }) => value === chosen)
                if (option) onChange(askedAs(draft, key, option.value))
              }}
            />
          ),
        )}
        <div class="fields fields-in-pairs">
          {draft.fields.map((field) => (
            <Field
              key={field.id}
              name={field.id}
              label={field.label}
              {...(field.help === undefined ? {} : { help: field.help })}
              kind="number"
              unit={<Sentence text={field.unit} />}
              value={draft.typed[field.id] ?? ''}
              onInput={(typed) => onChange({ ...draft, typed: { ...draft.typed, [field.id]: typed } })}
              faults={faultsOf(field)}
            />
          ))}
          {draft.wearAxis === '' ? null : (
            <div class="plan-rule-wear">
              <Field
                name="wear"
                label="Stress"
                help={protocolHelp[draft.wearAxis] ?? 'read after it'}
                kind="number"
                value={draft.wearAmount}
                onInput={(wearAmount) => onChange({ ...draft, wearAmount })}
                units={{
                  name: 'wear.axis',
                  value: wearAxes[draft.wearAxis as 'W2']?.several ?? draft.wearAxis,
                  options: axes.map((axis) => wearAxes[axis].several),
                  onChoose: (words) =>
                    onChange({
                      ...draft,
                      wearAxis: axes.find((axis) => wearAxes[axis].several === words) ?? draft.wearAxis,
                    }),
                }}
                faults={faults
                  .filter(({ pointer }) => /\/wear(\/|$)/.test(pointer))
                  .slice(0, 1)
                  .map(({ detail }) => ({ detail }))}
              />
            </div>
          )}
          {draft.fields.some(({ side }) => side === 'margin' || side === 'leastGain') ? (
            <Field
              name="confidence"
              label="Confidence"
              help="one-sided"
              kind="number"
              unit="%"
              value={draft.confidence}
              onInput={(confidence) => onChange({ ...draft, confidence })}
              faults={at('#/confidence')}
            />
          ) : null}
        </div>
        {draft.fields.some(
          ({ question, condition }) => comparisons.has(question) && !isOrdinal(condition.outcome),
        ) ? (
          <Pick
            name="method"
            label="Compared"
            options={methods}
            value={draft.method}
            onChoose={(method) => onChange({ ...draft, method: method as RuleDraft['method'] })}
          />
        ) : null}
        <p class="soft small">{whenJudged(props)}</p>
        {rules.length > 0 ? <Editions rules={rules} /> : null}
        {changed && next > 1 ? (
          <Field
            name="reason"
            label={`Why edition ${next}`}
            help="Shown wherever the rule is."
            value={reason}
            onInput={onReason}
            faults={at('#/reason')}
            required
          />
        ) : null}
        <ProblemNote refused={refused} />
        {changed ? (
          <div class="row">
            <Button type="submit" busy={busy}>
              {next === 1 ? 'Keep this rule' : `Keep as edition ${next}`}
            </Button>
            <span class="soft small">{next === 1 ? 'Not kept yet.' : 'Changed, not kept yet.'}</span>
          </div>
        ) : null}
      </form>
    </Section>
  )
}

function whenJudged({ plannedSessions, sessionWord }: PlanRuleProps): string {
  if (plannedSessions === undefined) return ''
  const number = `${plannedSessions} planned ${plannedSessions === 1 ? sessionWord.one : sessionWord.many}`
  return `Judged once, when the ${plannedSessions === 1 ? `planned ${sessionWord.one} is` : `${number} are`} in; before that it is not settled.`
}

function Editions({ rules }: { readonly rules: readonly Rule[] }) {
  return (
    <ul class="plain-list small soft" aria-label="Editions of the rule">
      {rules.map(({ id, edition, lockedAt, reason }) => (
        <li key={id}>
          Edition {edition}
          {lockedAt === null ? ', not locked' : `, locked ${dayAndTime(new Date(lockedAt))}`}
          {reason === null ? '' : `: ${reason}`}
        </li>
      ))}
    </ul>
  )
}
