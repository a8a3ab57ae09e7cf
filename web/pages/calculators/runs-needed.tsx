import { useState } from 'preact/hooks'
import { mostRuns, powerOfRuns, type RunsGoal, runsNeeded } from '#api/science/design/runs-needed.ts'
import { Pick } from '#web/form/choice.tsx'
import { MeasureField } from '#web/form/measure-field.tsx'
import { counted, perCent } from '#web/form/number-words.ts'
import { Answer } from '#web/pages/calculators/answer.tsx'
import {
  chanceInWords,
  runsQuestion,
  runsShown,
  useRunsFields,
} from '#web/pages/calculators/runs-question.ts'
import type { Studio } from '#web/pages/calculators/studio.ts'
import { Note } from '#web/parts/note.tsx'
import { PlainTable } from '#web/parts/plain-table.tsx'

const goals = [
  { value: 'no-worse', words: 'No worse than the reference', help: 'by less than the margin' },
  { value: 'difference', words: 'A difference', help: 'that there is one at all' },
] as const

let goalBefore: RunsGoal = 'no-worse'

/** How many sessions a question needs, from its margin and from how much sessions differ. */
export function RunsNeeded({ studio }: { readonly studio: Studio }) {
  const [goal, setGoal] = useState<RunsGoal>(goalBefore)
  const choose = (value: string): void => {
    goalBefore = value === 'difference' ? 'difference' : 'no-worse'
    setGoal(goalBefore)
  }
  const fields = useRunsFields(studio)
  const { missing, question } = runsQuestion(goal, fields)
  const needed = question && runsNeeded(question)
  const said = needed === undefined ? `More than ${mostRuns} sessions` : counted(needed, 'session')
  return (
    <div class="calculator">
      <div class="stack">
        <Pick name="goal" label="To show" options={goals} value={goal} onChoose={choose} />
        {goal === 'difference' ? (
          <MeasureField key="difference" {...fields.of('difference')} />
        ) : (
          <div key="no-worse" class="stack">
            <MeasureField {...fields.of('margin')} />
            <MeasureField {...fields.of('extra')} />
          </div>
        )}
        <MeasureField {...fields.of('sd')} />
        <MeasureField {...fields.of('chance')} />
      </div>
      <Answer title="Sessions needed" missing={missing} copy={said}>
        <p class="answer-figure">{said}</p>
        <p>
          {needed === undefined
            ? 'Nobody goes on that long. Take a wider margin, or find what makes the sessions differ.'
            : `Each holds both levels. They show it with a chance of ${perCent(question?.power ?? 0)} or more, at 95 % confidence.`}
        </p>
        {question === undefined ? null : (
          <PlainTable
            name="Chance by number of sessions"
            data={{
              head: [{ words: 'Sessions' }, { words: 'Chance to show it', figure: true }],
              rows: runsShown(needed).map((runs) => ({
                key: String(runs),
                cells: [String(runs), chanceInWords(powerOfRuns(runs, question))],
                chosen: runs === needed,
              })),
            }}
          />
        )}
        <div>
          <Note title="A session is a day at the stove, never a reading">
            More readings of one skein make its colour surer. They do not tell how much pots differ.
          </Note>
          <Note title="Never below three">
            The noise of measuring is not in this sum. “Try the plan” in a trial plays it through with noise,
            looks and lost skeins.
          </Note>
        </div>
      </Answer>
    </div>
  )
}
