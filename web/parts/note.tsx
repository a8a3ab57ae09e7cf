import './note.css'
import type { ComponentChildren } from 'preact'

/** How strongly the tool speaks, shown by the line at the left: in passing, in doubt, a fault, two that look alike. */
export type NoteKind = 'note' | 'doubt' | 'fault' | 'guard'

export type NoteProps = {
  readonly kind?: NoteKind
  readonly title: ComponentChildren
  /** At most two, small. */
  readonly buttons?: ComponentChildren
  readonly id?: string | undefined
  readonly children?: ComponentChildren
}

/** The tool speaking in the margin. `<Note kind="doubt" title="18 rinses" buttons={…}>The usual is 2–6. Keep it?</Note>` */
export function Note({ kind = 'note', title, buttons, id, children }: NoteProps) {
  return (
    <div class={`note note-${kind}`} id={id}>
      <p class="note-title">{title}</p>
      {children === undefined ? null : <div class="note-words">{children}</div>}
      {buttons === undefined ? null : <div class="note-buttons">{buttons}</div>}
    </div>
  )
}
