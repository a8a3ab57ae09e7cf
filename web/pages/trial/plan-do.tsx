import { useState } from 'preact/hooks'
import type { PatternBench } from '#api/contract/patterns.ts'
import { Tick } from '#web/form/choice.tsx'
import { Button } from '#web/parts/button.tsx'
import { Note } from '#web/parts/note.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'

export type PlanDoProps = {
  readonly bench: PatternBench
  /** A twin that is never washed would show the measuring error of this trial. */
  readonly twinsWanted: boolean
  /** Sessions that are drawn, and that are planned now. */
  readonly drawn: number
  readonly sessions: number | undefined
  readonly locked: boolean
  readonly measured: boolean
  /** A guard stands above and has the first button. */
  readonly guarded: boolean
  readonly doing: string | undefined
  readonly refused: unknown
  readonly onLock: () => void
  readonly onDraw: (twins: boolean) => void
}

/** What to do with the plan: lock the rule, draw the places, print the sheet; the next of them first. */
export function PlanDo(props: PlanDoProps) {
  const { bench, twinsWanted, drawn, sessions, locked, guarded, doing, refused, onLock, onDraw } = props
  const [twins, setTwins] = useState(true)
  const more = sessions === undefined ? 0 : sessions - drawn
  const next = guarded ? 'none' : !locked ? 'lock' : more > 0 ? 'draw' : 'print'
  const kind = (it: string) => (it === next ? 'do' : 'box')
  return (
    <div class="stack">
      {more > 0 && twinsWanted ? (
        <Tick
          name="twins"
          label="With a twin of the reference in each session, never washed: it shows the measuring error"
          ticked={twins}
          onTick={setTwins}
        />
      ) : null}
      <ProblemNote refused={refused} />
      <div class="row">
        {locked ? null : (
          <Button kind={kind('lock')} onPress={onLock} busy={doing}>
            Lock the rule
          </Button>
        )}
        {more > 0 ? (
          <Button kind={kind('draw')} onPress={() => onDraw(twins && twinsWanted)} busy={doing}>
            {drawn === 0 ? 'Draw places by lot' : `Draw ${more} more by lot`}
          </Button>
        ) : null}
        {drawn > 0 ? (
          <Button kind={kind('print')} onPress={() => window.print()}>
            Print the bench sheet
          </Button>
        ) : null}
      </div>
      {locked ? null : (
        <p class="soft small">
          {props.measured
            ? 'Readings are in already: a rule locked now is shown as later than they are.'
            : 'Lock it before the first reading. A later edition is possible, with its reason, and is shown.'}
        </p>
      )}
      {bench.vesselKind === 'packet' ? (
        <Note title="Hot steam">
          Lift the lid away from you, use tongs, let packets cool before you open them, never boil dry.
        </Note>
      ) : null}
    </div>
  )
}
