import { StepInterval } from '#web/charts/step-interval.tsx'
import type { RuleStep, StepRulerProps } from '#web/charts/step-ruler.tsx'
import { figure, fromTo } from '#web/form/number-words.ts'
import { Outside } from '#web/parts/table-box.tsx'
import { VerdictMark } from '#web/parts/verdict-mark.tsx'

export type StepCardsProps = StepRulerProps & {
  readonly bounds: readonly number[]
  readonly place: (value: number) => number
}

/** The rule, step by step, on a phone: for each step its answer, its interval, its figures and side limits. */
export function StepCards({ steps, sides, margin, boundName, bounds, place, afterStop }: StepCardsProps) {
  const shown = afterStop === undefined ? steps : steps.filter(({ role }) => role !== 'after-stop')
  return (
    <div class="step-cards">
      <ol class="plain-list">
        {shown.map((step) => (
          <li key={step.key} class={step.chosen ? 'step-card step-card-chosen' : 'step-card'}>
            <p class="step-card-head">
              <strong>{step.label}</strong>
              <span>
                {step.verdict === undefined || step.verdict === null ? null : (
                  <VerdictMark verdict={step.verdict} scale={0.84} />
                )}
                {step.answer}
              </span>
            </p>
            {step.role === 'reference' ? null : (
              <div class="step-card-ruler">
                <StepInterval step={step} bounds={bounds} place={place} />
              </div>
            )}
            <p class="step-card-foot">
              <span>{intervalOf(step)}</span>
              <span>
                {step.worst.map(({ words, outside }, index) => (
                  <span key={sides[index]?.short}>
                    {index === 0 ? '' : ' · '}
                    {sides[index]?.short} {outside ? <Outside>{words}</Outside> : words}
                  </span>
                ))}
              </span>
            </p>
          </li>
        ))}
      </ol>
      <p class="soft small step-card-margin">
        {bounds.length > 1
          ? `The dashed lines are the ${boundName ?? 'margin'}, ${figure(margin, 1)} to either side.`
          : `The dashed line is the ${boundName ?? 'margin'}, ${figure(margin, 1)}.`}{' '}
        {afterStop}
      </p>
    </div>
  )
}

function intervalOf({ lower, upper }: RuleStep): string {
  return typeof lower === 'number' && typeof upper === 'number' ? fromTo(lower, upper) : ''
}
