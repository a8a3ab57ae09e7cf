import './chip.css'
import type { ComponentChildren } from 'preact'

/** A fact that is held the same, inside `<ul class="chips plain-list">`: `<Chip>teal, 1.5 % depth</Chip>` */
export function Chip({ children }: { readonly children: ComponentChildren }) {
  return <li class="chip">{children}</li>
}
