import './due-row.css'
import type { ComponentChildren } from 'preact'

export type DueRowProps = {
  /** Filled when it is due now or late, open when later. */
  readonly now: boolean
  /** “Today”, “Fri 13”. */
  readonly day: string
  readonly what: string
  /** Of which trial, and how much: soft, below. */
  readonly of: ComponentChildren
  /** “2 days late” */
  readonly late?: string | undefined
  readonly button: ComponentChildren
}

/** One thing that is due, inside `<ul class="due-rows plain-list">`. */
export function DueRow({ now, day, what, of, late, button }: DueRowProps) {
  return (
    <li class="due-row">
      <span class="due-row-day">
        <svg width="12" height="12" viewBox="-6 -6 12 12" aria-hidden="true">
          <circle r="4.75" fill={now ? 'var(--ink)' : 'none'} stroke="var(--ink)" stroke-width="1.75" />
        </svg>
        {day}
      </span>
      <span class="due-row-what">
        <strong>{what}</strong>
        <span class="soft small">
          {of}
          {late === undefined ? null : (
            <>
              {' · '}
              <strong class="due-row-late">{late}</strong>
            </>
          )}
        </span>
      </span>
      <span class="due-row-button">{button}</span>
    </li>
  )
}
