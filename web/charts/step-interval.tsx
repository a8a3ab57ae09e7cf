import type { RuleStep } from '#web/charts/step-ruler.tsx'

export type StepIntervalProps = {
  readonly step: RuleStep
  /** The margin, or the bound on either side of nought. */
  readonly bounds: readonly number[]
  readonly place: (value: number) => number
}

/** One step’s interval on the shared ruler. The figures beside it say the same, so it has no name. */
export function StepInterval({ step, bounds, place }: StepIntervalProps) {
  return (
    <svg class="step-interval" width="100%" height="100%" aria-hidden="true">
      <line x1={`${place(0)}%`} x2={`${place(0)}%`} y1="0" y2="100%" stroke="var(--hair)" />
      {bounds.map((bound) => (
        <line
          key={bound}
          x1={`${place(bound)}%`}
          x2={`${place(bound)}%`}
          y1="0"
          y2="100%"
          stroke="var(--ink)"
          stroke-width="1.75"
          stroke-dasharray="5 3"
        />
      ))}
      <svg aria-hidden="true" y="50%" width="100%" height="1" overflow="visible">
        <Drawn step={step} place={place} />
      </svg>
    </svg>
  )
}

function Drawn({ step, place }: Omit<StepIntervalProps, 'bounds'>) {
  const { role, chosen, extra, lower, upper } = step
  if (role === 'reference')
    return (
      <circle
        cx={`${place(0)}%`}
        cy="0"
        r="4.75"
        fill="var(--wool)"
        stroke="var(--ink)"
        stroke-width="1.75"
      />
    )
  if (typeof extra !== 'number' || typeof lower !== 'number' || typeof upper !== 'number') return null
  if (place(lower) > 92) return <OffTheRuler to="right" />
  if (place(upper) < 2) return <OffTheRuler to="left" />
  const colour = chosen ? 'var(--accent)' : role === 'after-stop' ? 'var(--soft)' : 'var(--ink)'
  const [from, middle, to] = [Math.max(1, place(lower)), place(extra), Math.min(98, place(upper))]
  return (
    <g stroke={colour} stroke-width="2">
      <line x1={`${from}%`} x2={`${to}%`} y1="0" y2="0" />
      <line x1={`${from}%`} x2={`${from}%`} y1="-5" y2="5" />
      {place(upper) > 98 ? null : <line x1={`${to}%`} x2={`${to}%`} y1="-5" y2="5" />}
      {middle < 1 || middle > 98 ? null : (
        <circle cx={`${middle}%`} cy="0" r="5" fill={colour} stroke="none" />
      )}
    </g>
  )
}

/** An arrow in place of an interval that lies wholly beyond the ruler. */
function OffTheRuler({ to }: { readonly to: 'left' | 'right' }) {
  const path = to === 'right' ? 'M-15 0H15M9 -5L15 0L9 5' : 'M15 0H-15M-9 -5L-15 0L-9 5'
  return (
    <svg aria-hidden="true" x={to === 'right' ? '90%' : '8%'} overflow="visible">
      <path d={path} fill="none" stroke="var(--soft)" stroke-width="1.75" />
    </svg>
  )
}
