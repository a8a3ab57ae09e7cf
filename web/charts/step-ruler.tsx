import './step-ruler.css'
import type { ComponentChildren } from 'preact'
import type { Verdict } from '#api/science/verdicts/verdict.ts'
import { rulerScale } from '#web/charts/ruler-scale.ts'
import { StepCards } from '#web/charts/step-cards.tsx'
import { StepInterval } from '#web/charts/step-interval.tsx'
import { figure, fromTo } from '#web/form/number-words.ts'
import { Section } from '#web/parts/section.tsx'
import { Outside } from '#web/parts/table-box.tsx'
import { VerdictMark } from '#web/parts/verdict-mark.tsx'

export type RuleStep = {
  readonly key: string
  /** “35 min” */
  readonly label: string
  readonly role: 'reference' | 'step' | 'after-stop'
  readonly chosen: boolean
  readonly extra?: number | null
  readonly lower?: number | null
  readonly upper?: number | null
  /** One for each side limit, in the order of `sides`: the worst that was seen, and whether it is outside its limit. */
  readonly worst: readonly { readonly words: string; readonly outside: boolean }[]
  readonly verdict?: Verdict | null
  /** “holds on colour; felting 3” */
  readonly answer: string
}

export type StepRulerProps = {
  /** One soft line: against what, which interval, which end the rule looks at. */
  readonly says: ComponentChildren
  /** What is varied: “Steam”. */
  readonly axisLabel: string
  /** Over the figures of the steps; “extra change” unless given. */
  readonly extraLabel?: string
  /** “90 % interval” */
  readonly intervalLabel: string
  readonly margin: number
  /** What the bound is called; “margin” unless given. */
  readonly boundName?: string
  /** The bound counts to both sides. */
  readonly bothSides?: boolean
  /** “worst staining”, and on a phone “staining”. */
  readonly sides: readonly { readonly label: string; readonly short: string }[]
  /** From the reference down. */
  readonly steps: readonly RuleStep[]
  /** Said on a phone in place of the rows after the stop. */
  readonly afterStop?: string
}

/** The rule, step by step: every step’s interval on one ruler with the margin running through, then its side limits and answer. */
export function StepRuler(props: StepRulerProps) {
  const { says, axisLabel, intervalLabel, margin, sides, steps } = props
  const { boundName = 'margin', bothSides = false } = props
  const scale = rulerScale(steps, margin, boundName)
  const bounds = bothSides ? [-margin, margin] : [margin]
  const anyOutside = steps.some(({ worst }) => worst.some(({ outside }) => outside))
  return (
    <Section title="The rule, step by step" says={says}>
      <div class="step-ruler-wide">
        <table class="table step-ruler">
          <thead>
            <tr>
              <th scope="col">{axisLabel}</th>
              <th scope="col" class="step-ruler-cell">
                <span class="visually-hidden">
                  interval on a ruler, the {boundName} at {figure(margin, 1)}
                </span>
                {scale.labels.map(({ at, words, strong }) => (
                  <span
                    key={words}
                    aria-hidden="true"
                    class={strong ? 'step-ruler-label step-ruler-margin' : 'step-ruler-label'}
                    style={{ left: `${scale.place(at)}%` }}
                  >
                    {words}
                  </span>
                ))}
              </th>
              <th scope="col" class="figure">
                {props.extraLabel ?? 'extra change'}
              </th>
              <th scope="col" class="figure">
                {intervalLabel}
              </th>
              {sides.map(({ label }) => (
                <th key={label} scope="col" class="figure step-ruler-side">
                  {label}
                </th>
              ))}
              <th scope="col">answer</th>
            </tr>
          </thead>
          <tbody>
            {steps.map((step) => (
              <Row key={step.key} step={step} bounds={bounds} place={scale.place} sides={sides} />
            ))}
          </tbody>
        </table>
        {anyOutside ? (
          <p class="soft small step-ruler-key">
            <Outside>3</Outside> underlined: outside the locked limit.
          </p>
        ) : null}
      </div>
      <StepCards {...props} bounds={bounds} place={scale.place} />
    </Section>
  )
}

type RowProps = {
  readonly step: RuleStep
  readonly bounds: readonly number[]
  readonly place: (value: number) => number
  readonly sides: StepRulerProps['sides']
}

function Row({ step, bounds, place, sides }: RowProps) {
  const { label, role, chosen, extra, lower, upper, worst, verdict, answer } = step
  const rowClass = chosen ? 'chosen' : role === 'after-stop' ? 'aside' : undefined
  const hasInterval = typeof lower === 'number' && typeof upper === 'number'
  return (
    <tr class={rowClass}>
      <th scope="row">{label}</th>
      <td class="step-ruler-cell">
        <StepInterval step={step} bounds={bounds} place={place} />
      </td>
      <td class="figure">{typeof extra === 'number' ? figure(extra) : '–'}</td>
      <td class="figure">{hasInterval ? fromTo(lower, upper) : '–'}</td>
      {sides.map(({ label: side }, index) => (
        <td key={side} class="figure step-ruler-side">
          {worst[index]?.outside === true ? (
            <Outside>{worst[index]?.words}</Outside>
          ) : (
            (worst[index]?.words ?? '–')
          )}
        </td>
      ))}
      <td class="step-ruler-answer">
        <span>
          {verdict === undefined || verdict === null ? (
            <span class="step-ruler-no-mark" />
          ) : (
            <VerdictMark verdict={verdict} scale={0.84} />
          )}
          {answer}
        </span>
      </td>
    </tr>
  )
}
