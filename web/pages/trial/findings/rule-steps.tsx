import type { Finding } from '#api/contract/finding.ts'
import { type RuleStep, StepRuler } from '#web/charts/step-ruler.tsx'
import { perCent } from '#web/form/number-words.ts'
import { afterTheStop, sidesOf, worstOf } from '#web/pages/trial/findings/finding-words.ts'
import { limitSteps } from '#web/pages/trial/findings/limit-steps.ts'
import { StepTable } from '#web/pages/trial/findings/step-table.tsx'
import { stepsOnRuler } from '#web/pages/trial/findings/steps-on-ruler.ts'

/** The rule, step by step: the deciding intervals on a ruler where a bound judges, else the limits that were met or not. */
export function RuleSteps({ finding }: { readonly finding: Finding }) {
  const { verdict, steps, rule, factor } = finding
  if (verdict === null || steps.length === 0 || rule === null) return null
  const ruler = stepsOnRuler(finding)
  if (ruler === undefined) return <StepTable {...limitSteps(finding)} />
  const confidence = verdict.estimate?.confidence ?? 2 * rule.confidence - 1
  const sides = sidesOf(steps)
  const after = afterTheStop(steps)
  return (
    <StepRuler
      says={ruler.says}
      axisLabel={factor?.label ?? ''}
      extraLabel={ruler.name}
      intervalLabel={`${perCent(confidence)} interval`}
      margin={ruler.bound}
      boundName={ruler.boundName}
      bothSides={ruler.bothSides}
      sides={sides.map((side) => ({ label: worstOf(side), short: side.label }))}
      steps={steps.map(
        (step): RuleStep => ({
          key: step.levelId,
          label: step.label,
          role: step.reference ? 'reference' : step.afterStop ? 'after-stop' : 'step',
          chosen: step.levelId === verdict.levelId,
          extra: step.deciding?.value ?? null,
          lower: step.deciding?.lower ?? null,
          upper: step.deciding?.upper ?? null,
          worst: sides.map(({ key }) => {
            const limit = step.limits.find((it) => it.key === key)
            return { words: limit?.worstText ?? '–', outside: limit?.broken ?? false }
          }),
          verdict: step.afterStop ? null : step.answer,
          answer: step.says,
        }),
      )}
      {...(after === undefined ? {} : { afterStop: after })}
    />
  )
}
