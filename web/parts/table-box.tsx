import './table-box.css'
import type { ComponentChildren } from 'preact'

export type TableBoxProps = {
  /** What the table is, for those who do not see the heading above it. */
  readonly name: string
  /** `thead` and `tbody`. Cells of figures take `class="figure"`, the chosen row `class="chosen"`, a row out of the count `class="aside"`. */
  readonly children: ComponentChildren
}

/** A table that scrolls in its own box with its first column held: `<TableBox name="Every skein"><thead>…</thead><tbody>…</tbody></TableBox>` */
export function TableBox({ name, children }: TableBoxProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keyboard (WCAG 2.1.1)
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is for a form; this only groups what scrolls together
    <div class="table-box" role="group" aria-label={name} tabIndex={0}>
      <table class="table">{children}</table>
    </div>
  )
}

/** A result outside its locked limit: heavy and underlined, and explained below the table. */
export function Outside({ children }: { readonly children: ComponentChildren }) {
  return (
    <span class="table-outside">
      {children}
      <span class="visually-hidden"> (outside the limit)</span>
    </span>
  )
}

/** A result as it is said, underlined where it lies outside its limit: `<LimitedResult words="3-4" outside />` */
export function LimitedResult({ words, outside }: { readonly words: string; readonly outside: boolean }) {
  return <span>{outside ? <Outside>{words}</Outside> : words}</span>
}
