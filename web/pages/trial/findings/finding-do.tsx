import { useEffect, useRef, useState } from 'preact/hooks'
import type { DeclaredVerdict } from '#api/contract/declared-verdict.ts'
import type { Finding } from '#api/contract/finding.ts'
import { declareVerdict } from '#web/api/findings.ts'
import { dayAndTime } from '#web/form/date-words.ts'
import { keptOf, type NextStep, nextSteps, withinQuery } from '#web/pages/trial/findings/finding-words.ts'
import { Button, type ButtonKind, LinkButton } from '#web/parts/button.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'

export type FindingDoProps = {
  readonly finding: Finding
  readonly verdict: NonNullable<Finding['verdict']>
  readonly declared: readonly DeclaredVerdict[]
  readonly again: () => void
}

/** What there is to do about a verdict, and when it was declared. */
export function FindingDo({ finding, verdict, declared, again }: FindingDoProps) {
  const [declaring, setDeclaring] = useState(false)
  const [refused, setRefused] = useState<unknown>()
  const record = useRef<HTMLParagraphElement>(null)
  const pressed = useRef(false)
  const kept = keptOf(declared, finding)
  const steps = nextSteps(verdict, {
    declared: kept !== undefined,
    locked: finding.rule?.lockedAt != null,
  })

  // The button that was pressed is gone then; the focus goes to what came of it.
  useEffect(() => {
    if (kept === undefined || !pressed.current) return
    pressed.current = false
    record.current?.focus()
  }, [kept])

  async function declare(): Promise<void> {
    setDeclaring(true)
    setRefused(undefined)
    try {
      await declareVerdict(finding.trialId, finding.within?.levelId)
      pressed.current = true
      again()
    } catch (problem) {
      setRefused(problem)
    } finally {
      setDeclaring(false)
    }
  }

  const shown = (step: NextStep, kind: ButtonKind) => {
    const { trialId } = finding
    if (step.kind === 'declare')
      return (
        <Button
          key="declare"
          kind={kind}
          onPress={() => void declare()}
          busy={declaring ? 'Declaring …' : undefined}
        >
          Declare the verdict
        </Button>
      )
    if (step.kind === 'sheet')
      return (
        <LinkButton key="sheet" kind={kind} href={`/trials/${trialId}/evidence${withinQuery(finding)}`}>
          Make an evidence sheet
        </LinkButton>
      )
    return (
      <LinkButton key="plan" kind={kind} href={`/trials/${trialId}/plan`}>
        {step.words}
      </LinkButton>
    )
  }

  return (
    <>
      {kept === undefined ? null : (
        <p class="soft finding-declared" tabIndex={-1} ref={record}>
          {kept.look > 1 ? `Look ${kept.look}, declared` : 'Declared'} {dayAndTime(new Date(kept.declaredAt))}
          , under edition {kept.ruleEdition} of the rule.
        </p>
      )}
      <ProblemNote refused={refused} />
      <div class="finding-buttons">{steps.map((step, place) => shown(step, place === 0 ? 'do' : 'box'))}</div>
    </>
  )
}
