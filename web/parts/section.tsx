import './section.css'
import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'

export type SectionProps = {
  readonly title: ComponentChildren
  /** One soft line below the title. */
  readonly says?: ComponentChildren
  /** A plain button or link at the right of the title: “save as CSV”. */
  readonly aside?: ComponentChildren
  readonly level?: 2 | 3
  /** A panel one could hand on stands on paper. */
  readonly onPaper?: boolean
  readonly id?: string
  readonly children: ComponentChildren
}

/** A section under a 2 px rule: `<Section title="Every skein" says="24 skeins, none lost.">…</Section>` */
export function Section({ title, says, aside, level = 2, onPaper = false, id, children }: SectionProps) {
  const heading = useId()
  const Heading = level === 2 ? 'h2' : 'h3'
  return (
    <section class={onPaper ? 'section section-on-paper' : 'section'} id={id} aria-labelledby={heading}>
      <div class="section-head">
        <Heading id={heading}>{title}</Heading>
        {aside === undefined ? null : <div class="section-aside">{aside}</div>}
      </div>
      {says === undefined ? null : <p class="section-says">{says}</p>}
      <div class="section-body">{children}</div>
    </section>
  )
}
