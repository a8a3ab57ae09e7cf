import { useId, useRef, useState } from 'preact/hooks'
import type { Paste } from '#web/pages/trial/readings/paste.ts'
import { Button } from '#web/parts/button.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'

/** The first step: paste the rows, or choose a file. What was pasted stays when it cannot be read. */
export function PasteBox({ paste }: { readonly paste: Paste }) {
  const id = useId()
  const box = useRef<HTMLTextAreaElement>(null)
  const [file, setFile] = useState<string | undefined>()
  const [unread, setUnread] = useState<string | undefined>()
  const busy = paste.table !== undefined && paste.refused === undefined

  const choose = async (chosen: File | undefined): Promise<void> => {
    if (chosen === undefined) return
    setFile(chosen.name)
    if (chosen.size > mostBytes) {
      setUnread(`${chosen.name} is larger than 8 MB. Send it in two files; each begins with the headings.`)
      return
    }
    setUnread(undefined)
    paste.begin(await chosen.text())
  }
  return (
    <form
      class="stack paste-box"
      onSubmit={(event) => {
        event.preventDefault()
        setFile(undefined)
        paste.begin(box.current?.value ?? '')
        setUnread(
          (box.current?.value ?? '').trim() === '' ? 'Paste the rows with their headings.' : undefined,
        )
      }}
    >
      <div class="field">
        <label for={`${id}-box`}>Rows from a spreadsheet</label>
        <p class="field-help" id={`${id}-help`}>
          Mark them there with their headings, copy, and paste them here. One row is one skein, or one reading
          of it. Commas and points are both read as decimal signs; a blank cell is not recorded, never zero.
        </p>
        <div class={unread === undefined ? 'field-box' : 'field-box field-box-at-fault'}>
          <textarea
            id={`${id}-box`}
            ref={box}
            class="paste-text"
            rows={12}
            spellcheck={false}
            aria-describedby={`${id}-help${unread === undefined ? '' : ` ${id}-unread`}`}
            aria-invalid={unread === undefined ? undefined : true}
          />
        </div>
        {unread === undefined ? null : (
          <p class="note note-fault" id={`${id}-unread`} role="alert">
            {unread}
          </p>
        )}
      </div>
      <ProblemNote refused={paste.refused} />
      <ReasonsOf refused={paste.refused} />
      <div class="row">
        <Button kind="do" type="submit" busy={busy ? 'Reading …' : undefined}>
          Match the columns
        </Button>
        <label class="button button-box paste-file">
          {file === undefined ? 'Choose a file' : file}
          <input
            type="file"
            accept=".csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain"
            aria-label="Choose a file, CSV or tabs"
            onChange={(event) => {
              void choose(event.currentTarget.files?.[0])
              event.currentTarget.value = ''
            }}
          />
        </label>
        <span class="soft small">CSV, or text with tabs</span>
      </div>
    </form>
  )
}

const mostBytes = 8_000_000

/** The faults of the table as a whole, below the sentence of the refusal. */
function ReasonsOf({ refused }: { readonly refused: unknown }) {
  const faults =
    (refused as { faults?: readonly { pointer: string; detail: string }[] } | undefined)?.faults ?? []
  if (faults.length === 0) return null
  return (
    <ul class="plain-list">
      {faults.slice(0, 10).map(({ pointer, detail }) => (
        <li key={`${pointer} ${detail}`}>{detail}</li>
      ))}
    </ul>
  )
}
