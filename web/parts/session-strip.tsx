import './session-strip.css'

export type StripSession = {
  readonly key: string
  readonly label: string
  /** `done`: its readings are in; `begun`: the stove has been lit or some readings are in; `planned`: to come. */
  readonly state: 'done' | 'begun' | 'planned'
  /** “24 of 24 skeins read”. */
  readonly words?: string
}

/** The sessions of a trial as knots on a thread: filled has happened, half has begun, open is to come, dotted not done yet. */
export function SessionStrip({ sessions }: { readonly sessions: readonly StripSession[] }) {
  return (
    <ol class="session-strip plain-list">
      {sessions.map(({ key, label, state, words }) => (
        <li key={key} data-state={state}>
          <svg width="14" height="14" viewBox="-7 -7 14 14" aria-hidden="true">
            <circle
              r="5"
              fill={state === 'done' ? 'var(--ink)' : 'var(--wool)'}
              stroke="var(--ink)"
              stroke-width="1.75"
            />
            {state === 'begun' ? <path d="M0 -5A5 5 0 0 0 0 5Z" fill="var(--ink)" /> : null}
          </svg>
          <span class="session-strip-label">{label}</span>
          <span class="soft small">{words ?? (state === 'planned' ? 'to come' : state)}</span>
        </li>
      ))}
    </ol>
  )
}
