import { useMemo } from 'preact/hooks'
import type { DeclaredVerdict } from '#api/contract/declared-verdict.ts'
import type { Finding } from '#api/contract/finding.ts'
import { ladderOf, shiftOf, wearOf } from '#api/contract/pictures-of-finding.ts'
import { LadderFigure } from '#web/charts/ladder-figure.tsx'
import { ShiftMap } from '#web/charts/shift-map.tsx'
import { WearFigure } from '#web/charts/wear-figure.tsx'
import { BeforeAndAfter } from '#web/pages/trial/findings/before-and-after.tsx'
import { EverySkein } from '#web/pages/trial/findings/every-skein.tsx'
import { FindingHead } from '#web/pages/trial/findings/finding-head.tsx'
import { FindingMargin } from '#web/pages/trial/findings/finding-margin.tsx'
import { HowWorkedOut } from '#web/pages/trial/findings/how-worked-out.tsx'
import { RuleSteps } from '#web/pages/trial/findings/rule-steps.tsx'
import { WhatWouldSettle } from '#web/pages/trial/findings/what-would-settle.tsx'

export type FindingViewProps = {
  readonly finding: Finding
  readonly recorded: readonly DeclaredVerdict[]
  /** Reads the finding again, after a verdict was recorded. */
  readonly again: () => void
  /** The part of several that is asked for; all of them together unless given. */
  readonly within: string | undefined
  /** Shows another part, or all of them together. */
  readonly lookWithin: (within: string | undefined) => void
}

/** A finding, from its sentence down to its method. */
export function FindingView(props: FindingViewProps) {
  const { finding } = props
  const ladder = useMemo(() => ladderOf(finding), [finding])
  const shift = useMemo(() => shiftOf(finding), [finding])
  const wear = useMemo(() => wearOf(finding), [finding])
  return (
    <div class="stack-wide">
      <div class="finding-top">
        <FindingHead {...props} />
        <FindingMargin finding={finding} recorded={props.recorded} within={props.within} />
        <div class="finding-below stack-wide">
          <WhatWouldSettle finding={finding} />
          {ladder === undefined ? null : <LadderFigure picture={ladder} />}
        </div>
      </div>
      <RuleSteps finding={finding} />
      {shift === undefined && wear === undefined ? null : (
        <div class={shift && wear ? 'two-columns two-columns-wide-first' : undefined}>
          {shift === undefined ? null : <ShiftMap picture={shift} />}
          {wear === undefined ? null : <WearFigure picture={wear} />}
        </div>
      )}
      <BeforeAndAfter finding={finding} />
      <EverySkein finding={finding} />
      <HowWorkedOut finding={finding} />
    </div>
  )
}
