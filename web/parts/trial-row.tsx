import './trial-row.css'
import type { Lab } from '#api/science/colour/lab.ts'
import type { Verdict } from '#api/science/verdicts/verdict.ts'
import { Swatch } from '#web/parts/swatch.tsx'
import { VerdictMark } from '#web/parts/verdict-mark.tsx'

export type TrialRowProps = {
  readonly href: string
  readonly question: string
  /** “4 sessions · 24 of 24 skeins read” */
  readonly counts: string
  /** The levels’ colours as last read; none yet: an empty strip. */
  readonly colours: readonly Lab[]
  readonly verdict?: Verdict | undefined
  /** “35 minutes holds”, “no verdict before session 3”, “reading”. */
  readonly state: string
}

/** One trial in a list, inside `<ul class="trial-rows plain-list">`. */
export function TrialRow({ href, question, counts, colours, verdict, state }: TrialRowProps) {
  return (
    <li class="trial-row">
      <Swatch colours={colours} size="list" />
      <div class="trial-row-words">
        <a href={href}>{question}</a>
        <p class="soft small">{counts}</p>
      </div>
      <p class="trial-row-state">
        {verdict === undefined ? null : <VerdictMark verdict={verdict} scale={0.94} />}
        {state}
      </p>
    </li>
  )
}
