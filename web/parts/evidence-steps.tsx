import './evidence-steps.css'

export type EvidenceStep = 0 | 1 | 2 | 3 | 4

/** The five steps E0–E4 as knots on a thread, with what the present one means: `<EvidenceSteps reached={2}>three or more sessions, rule first</EvidenceSteps>` */
export function EvidenceSteps({
  reached,
  children,
}: {
  readonly reached: EvidenceStep
  readonly children: string
}) {
  const steps = [0, 1, 2, 3, 4] as const
  return (
    <div class="evidence-steps">
      <svg width="300" height="54" viewBox="0 0 300 54" aria-hidden="true">
        <line x1="14" x2="286" y1="18" y2="18" stroke="var(--ink)" />
        {steps.map((step) => (
          <g key={step}>
            <circle
              cx={14 + 68 * step}
              cy="18"
              r={step === reached ? 9 : 5}
              fill={step <= reached ? 'var(--ink)' : 'var(--wool)'}
              stroke="var(--ink)"
              stroke-width="1.75"
            />
            <text
              class={step === reached ? 'evidence-steps-here' : 'evidence-steps-other'}
              x={14 + 68 * step}
              y="48"
              text-anchor="middle"
            >
              E{step}
            </text>
          </g>
        ))}
      </svg>
      <p>
        <strong>E{reached}</strong>: {children}
      </p>
    </div>
  )
}
