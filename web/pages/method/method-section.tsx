import type { ComponentChildren } from 'preact'
import { Section } from '#web/parts/section.tsx'

/** One chapter of “How it is worked out”, with an address of its own: `/method#noise`. */
export function MethodSection({
  id,
  title,
  children,
}: {
  readonly id: string
  readonly title: string
  readonly children: ComponentChildren
}) {
  return (
    <Section id={id} title={title}>
      <div class="method-text">{children}</div>
    </Section>
  )
}

/** A formula on a line of its own. */
export function Formula({ children }: { readonly children: ComponentChildren }) {
  return <p class="method-formula">{children}</p>
}
