/** Four glasses on a thread, the rinse water clearing: the mark of Runs Clear. Always beside its name, so it has none itself. */
export function Mark() {
  const strengths = [1, 0.62, 0.26, 0]
  return (
    <svg width="66" height="16" viewBox="0 0 66 16" aria-hidden="true" focusable="false">
      <line x1="0" y1="8" x2="66" y2="8" stroke="var(--ink)" stroke-width="1.5" />
      {strengths.map((strength, place) => (
        <g key={strength}>
          <circle cx={9 + place * 16} cy="8" r="6" fill="var(--wool)" />
          <circle
            cx={9 + place * 16}
            cy="8"
            r="6"
            fill="var(--ink)"
            fill-opacity={strength}
            stroke="var(--ink)"
            stroke-width="1.5"
          />
        </g>
      ))}
    </svg>
  )
}
