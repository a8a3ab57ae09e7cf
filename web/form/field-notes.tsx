import { Button } from '#web/parts/button.tsx'
import { Note } from '#web/parts/note.tsx'

export type FieldFault = {
  readonly detail: string
  /** A second line: “Did you mean 35?” */
  readonly hint?: string
  /** The mend that is offered: “Make it 35”. */
  readonly mend?: { readonly words: string; readonly make: () => void }
}

export type FieldDoubt = {
  /** Ends in “Keep it?”. */
  readonly detail: string
  readonly onKeep: () => void
}

export type FieldNotesProps = {
  readonly id: string
  readonly faults: readonly FieldFault[]
  readonly doubt: FieldDoubt | undefined
  /** Brings the reader back to the box. */
  readonly onChange: () => void
}

/** What stands below a field: its faults, each with the mend, or else the doubt about it. */
export function FieldNotes({ id, faults, doubt, onChange }: FieldNotesProps) {
  if (faults.length === 0 && doubt === undefined) return null
  return (
    <div class="field-notes" id={id}>
      {faults.map(({ detail, hint, mend }) => (
        <Note
          key={detail}
          kind="fault"
          title={detail}
          buttons={
            mend === undefined ? undefined : (
              <Button small onPress={mend.make}>
                {mend.words}
              </Button>
            )
          }
        >
          {hint}
        </Note>
      ))}
      {faults.length > 0 || doubt === undefined ? null : (
        <Note
          kind="doubt"
          title={doubt.detail.replace(/\s*Keep it\?$/, '')}
          buttons={
            <>
              <Button small onPress={doubt.onKeep}>
                Keep it
              </Button>
              <Button small onPress={onChange}>
                Change it
              </Button>
            </>
          }
        >
          Keep it?
        </Note>
      )}
    </div>
  )
}
