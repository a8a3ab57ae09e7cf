import { useEffect, useRef, useState } from 'preact/hooks'
import type { DeclaredVerdict } from '#api/contract/declared-verdict.ts'
import type { Finding } from '#api/contract/finding.ts'
import { recordVerdict } from '#web/api/findings.ts'
import { dayAndTime } from '#web/form/date-words.ts'
import { keptOf, type NextStep, nextSteps, withinQuery } from '#web/pages/trial/findings/finding-words.ts'
import { Button, type ButtonKind, LinkButton } from '#web/parts/button.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'

export type FindingDoProps = {
  readonly finding: Finding
  readonly verdict: NonNullable<Finding['verdict']>
  readonly recorded: readonly DeclaredVerdict[]
  /** The part of several that is asked for; all of them together unless given. */
  readonly within: string | undefined
  readonly again: () => void
}

/** What there is to do about a verdict, and when it was recorded. One part alone is recorded beside its sheet. */
export function FindingDo({ finding, verdict, recorded, within, again }: FindingDoProps) {
  const [recording, setRecording] = useState(false)
  const [refused, setRefused] = useState<unknown>()
  const record = useRef<HTMLParagraphElement>(null)
  const pressed = useRef(false)
  const kept = keptOf(recorded, finding, within)
  const steps = nextSteps(verdict, {
    recorded: kept !== undefined || within !== undefined,
    locked: finding.rule?.lockedAt != null,
  })

  // The button that was pressed is gone then; the focus goes to what came of it.
  useEffect(() => {
    if (kept === undefined || !pressed.current) return
    pressed.current = false
    record.current?.focus()
  }, [kept])

  async function keep(): Promise<void> {
    setRecording(true)
    setRefused(undefined)
    try {
      await recordVerdict(finding.trialId, within)
      pressed.current = true
      again()
    } catch (problem) {
      setRefused(problem)
    } finally {
      setRecording(false)
    }
  }

  const shown = (step: NextStep, kind: ButtonKind) => {
    const { trialId } = finding
    if (step.kind === 'record')
      return (
        <Button
          key="record"
          kind={kind}
          onPress={() => void keep()}
          busy={recording ? 'Recording …' : undefined}
        >
          Record the verdict
        </Button>
      )
    if (step.kind === 'sheet')
      return (
        <LinkButton key="sheet" kind={kind} href={`/trials/${trialId}/evidence${withinQuery(within)}`}>
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
        <p class="soft finding-recorded" tabIndex={-1} ref={record}>
          {kept.look > 1 ? `Look ${kept.look}, recorded` : 'Recorded'} {dayAndTime(new Date(kept.declaredAt))}
          , under edition {kept.ruleEdition} of the rule.
        </p>
      )}
      <ProblemNote refused={refused} />
      <div class="finding-buttons">{steps.map((step, place) => shown(step, place === 0 ? 'do' : 'box'))}</div>
    </>
  )
}
