import './rule-line.css'
import type { ComponentChildren } from 'preact'

/** The rule of a trial in one soft line under its title, with a padlock when it is locked. `<RuleLine locked>Rule locked 24 February …</RuleLine>` */
export function RuleLine({
  locked,
  children,
}: {
  readonly locked: boolean
  readonly children: ComponentChildren
}) {
  return (
    <div class="rule-line">
      {locked ? (
        <svg width="14" height="16" viewBox="0 0 14 16" aria-hidden="true">
          <path d="M3.5 7V4.5a3.5 3.5 0 0 1 7 0V7" fill="none" stroke="var(--soft)" stroke-width="2" />
          <rect x="0.5" y="6.5" width="13" height="9" rx="1.5" fill="var(--soft)" />
        </svg>
      ) : null}
      <p>{children}</p>
    </div>
  )
}
