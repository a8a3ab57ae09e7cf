import { useState } from 'preact/hooks'
import type { CellFault, TableCheck } from '#api/contract/table.ts'
import { counted, grouped } from '#web/form/number-words.ts'
import { noteId } from '#web/pages/trial/readings/grid-row.tsx'
import { type FaultNote, faultNotes } from '#web/pages/trial/readings/marks.ts'
import type { Cell, Paste } from '#web/pages/trial/readings/paste.ts'
import { Button } from '#web/parts/button.tsx'
import { Sentence } from '#web/parts/delta-e.tsx'
import { Note } from '#web/parts/note.tsx'

const shownAtFirst = 12

export type RowNotesProps = {
  readonly check: TableCheck
  readonly paste: Paste
  readonly onGoTo: (cell: Cell) => void
}

/** What the rows say: faults with their mends, doubts to be kept or changed, and how blanks and commas are read. */
export function RowNotes({ check, paste, onGoTo }: RowNotesProps) {
  const [all, setAll] = useState(false)
  const faults = faultNotes(check)
  const { doubts } = check
  const shownFaults = all ? faults : faults.slice(0, shownAtFirst)
  const shownDoubts = all ? doubts : doubts.slice(0, Math.max(0, shownAtFirst - shownFaults.length))
  const hidden = faults.length + doubts.length - shownFaults.length - shownDoubts.length
  const unsaid = check.faultsInAll + check.doubtsInAll - check.faults.length - doubts.length
  return (
    <div>
      {shownFaults.map((fault) => (
        <FaultSaid key={fault.title} fault={fault} paste={paste} onGoTo={onGoTo} />
      ))}
      {shownDoubts.map((doubt) => (
        <DoubtSaid key={doubt.title} doubt={doubt} paste={paste} onGoTo={onGoTo} />
      ))}
      {hidden > 0 ? (
        <Note
          title={`${counted(hidden, 'more row is', 'more rows are')} marked in the table`}
          buttons={
            <Button small onPress={() => setAll(true)}>
              Say all of them
            </Button>
          }
        />
      ) : null}
      {unsaid > 0 ? (
        <Note title={`${grouped(unsaid)} more are not listed`}>They are said once these are fixed.</Note>
      ) : null}
      {check.doubtsInAll > 3 ? (
        <Note
          kind="doubt"
          title={`${counted(check.doubtsInAll, 'value')} to confirm`}
          buttons={
            <Button small onPress={() => paste.keepDoubts('all')}>
              Keep all of them
            </Button>
          }
        />
      ) : null}
      {check.asks
        .filter((ask) => ask.key === 'columns')
        .map((ask) => (
          <Note
            key={ask.question}
            kind={ask.needed ? 'fault' : 'note'}
            title={ask.needed ? 'To be said first' : 'Not recognised'}
          >
            {ask.question}
          </Note>
        ))}
      {check.notes.map((note) => (
        <Note key={note.title} title={note.title}>
          <Sentence text={note.text} />
        </Note>
      ))}
    </div>
  )
}

function FaultSaid({
  fault: { title, detail, cells, mend },
  paste,
  onGoTo,
}: {
  readonly fault: FaultNote
  readonly paste: Paste
  readonly onGoTo: (cell: Cell) => void
}) {
  const [first] = cells
  return (
    <Note
      kind="fault"
      id={first === undefined ? undefined : noteId(first.row, first.column)}
      title={<SaidOf cell={first} title={title} onGoTo={onGoTo} />}
      buttons={
        mend === undefined ? undefined : (
          <Button small onPress={() => paste.type([mend])}>
            {mend.words}
          </Button>
        )
      }
    >
      <Sentence text={detail} />
      {cells.slice(1).map((cell) => (
        <span key={cell.row} id={noteId(cell.row, cell.column)} class="visually-hidden">
          {title}. {detail}
        </span>
      ))}
    </Note>
  )
}

function DoubtSaid({
  doubt,
  paste,
  onGoTo,
}: {
  readonly doubt: CellFault
  readonly paste: Paste
  readonly onGoTo: (cell: Cell) => void
}) {
  const cell = doubt.column === null ? undefined : { row: doubt.row - 1, column: doubt.column }
  return (
    <Note
      kind="doubt"
      id={cell === undefined ? undefined : noteId(cell.row, cell.column)}
      title={<SaidOf cell={cell} title={doubt.title} onGoTo={onGoTo} />}
      buttons={
        cell === undefined ? undefined : (
          <>
            <Button small name={`Keep it: ${doubt.title}`} onPress={() => paste.keepDoubts([cell])}>
              Keep it
            </Button>
            <Button small name={`Change it: ${doubt.title}`} onPress={() => onGoTo(cell)}>
              Change it
            </Button>
          </>
        )
      }
    >
      <Sentence text={doubt.detail} />
    </Note>
  )
}

/** The title of a note, which leads to its cell. */
function SaidOf({
  cell,
  title,
  onGoTo,
}: {
  readonly cell: Cell | undefined
  readonly title: string
  readonly onGoTo: (cell: Cell) => void
}) {
  if (cell === undefined) return <>{title}</>
  return (
    <button type="button" class="paste-said-of" title="Go to the cell" onClick={() => onGoTo(cell)}>
      {title}
    </button>
  )
}
