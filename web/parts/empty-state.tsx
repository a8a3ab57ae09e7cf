import './empty-state.css'
import type { ComponentChildren } from 'preact'

export type EmptyStateProps = {
  /** What is so: “No readings yet.” An `<h2>`, or a `<PageTitle>` where it heads the page. */
  readonly title: ComponentChildren
  /** What to do first. */
  readonly children: ComponentChildren
  /** One *do*, and one way to look around. */
  readonly buttons?: ComponentChildren
}

/** Where nothing stands yet: what is so, what to do first. `<EmptyState title={<h2>No readings yet</h2>}>Paste a table …</EmptyState>` */
export function EmptyState({ title, children, buttons }: EmptyStateProps) {
  return (
    <div class="empty-state">
      {title}
      <p>{children}</p>
      {buttons === undefined ? null : <div class="row">{buttons}</div>}
    </div>
  )
}
