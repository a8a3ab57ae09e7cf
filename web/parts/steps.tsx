import './steps.css'

export type StepsProps = {
  readonly names: readonly string[]
  /** Which one is being done, from 0. */
  readonly at: number
}

/** Where one is in a thing of several steps: `<Steps names={['Paste', 'Match and mend', 'Keep']} at={1} />` */
export function Steps({ names, at }: StepsProps) {
  return (
    <ol class="steps plain-list">
      {names.map((name, place) => (
        <li key={name} aria-current={place === at ? 'step' : undefined} data-done={place < at}>
          <svg width="14" height="14" viewBox="-7 -7 14 14" aria-hidden="true">
            <circle
              r="5.5"
              fill={place <= at ? 'currentColor' : 'none'}
              stroke="currentColor"
              stroke-width="1.75"
            />
          </svg>
          {name}
          {place < at ? <span class="visually-hidden"> (done)</span> : null}
        </li>
      ))}
    </ol>
  )
}
