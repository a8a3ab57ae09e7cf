import { verdictMarkShape } from '#api/science/pictures/verdict-mark.ts'
import { type Verdict, verdictInWords } from '#api/science/verdicts/verdict.ts'

export type VerdictMarkProps = {
  readonly verdict: Verdict
  /** 1 in lists, 2 at the head of the findings. */
  readonly scale?: number
  /** True where no word stands beside it: the mark then says its own name. */
  readonly alone?: boolean
}

/**
 * An interval and a margin line: wholly left of it holds, wholly right does not hold, across it is not settled. It shows
 * the answer, not the data. `<VerdictMark verdict="holds" /> holds`
 */
export function VerdictMark({ verdict, scale = 1, alone = false }: VerdictMarkProps) {
  const drawing = <Drawing verdict={verdict} scale={scale} />
  return alone ? (
    <span role="img" aria-label={verdictInWords(verdict)}>
      {drawing}
    </span>
  ) : (
    drawing
  )
}

function Drawing({ verdict, scale }: { readonly verdict: Verdict; readonly scale: number }) {
  const { margin, from, middle, to } = verdictMarkShape(verdict)
  return (
    <svg
      width={32 * scale}
      height={20 * scale}
      viewBox="0 0 32 20"
      style={{ flex: 'none' }}
      aria-hidden="true"
    >
      <g stroke="var(--ink)" fill="none">
        <line x1={margin} y1="0" x2={margin} y2="20" stroke-width="2.4" />
        <path d={`M${from} 10H${to}M${from} 6.4v7.2M${to} 6.4v7.2`} stroke-width="1.5" />
      </g>
      <circle cx={middle} cy="10" r="3.2" fill="var(--ink)" />
    </svg>
  )
}
