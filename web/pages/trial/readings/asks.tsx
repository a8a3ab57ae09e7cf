import { useEffect, useState } from 'preact/hooks'
import type { Ask, Column, TableCheck } from '#api/contract/table.ts'
import type { Wear } from '#api/contract/wear-words.ts'
import { Choice, Pick } from '#web/form/choice.tsx'
import { Field } from '#web/form/field.tsx'
import type { Paste } from '#web/pages/trial/readings/paste.ts'
import { ReadWith } from '#web/pages/trial/readings/read-with.tsx'
import { WearFields } from '#web/pages/trial/readings/wear-fields.tsx'

const needsWear = new Set(['dE00', 'staining', 'staining dE76', 'change grade'])

export type AsksProps = { readonly check: TableCheck; readonly paste: Paste }

/** The questions that must be answered once for all rows before any can be kept. An answered one stays, to be changed. */
export function Asks({ check, paste }: AsksProps) {
  const { columns } = check
  const { answers } = paste
  const asked = useAsked(check)
  const after = columns.filter((column) => column.when === 'after' && column.wear === undefined)
  const open = columns.filter(
    (column) => column.as === 'outcome' && needsWear.has(column.kind ?? '') && column.when === undefined,
  )
  const counts = columns.some((column) => column.as === 'worn')
  const isNeeded = (key: Ask['key']) => check.asks.some((ask) => ask.key === key && ask.needed)
  return (
    <div class="paste-asks">
      {after.length > 0 && !counts ? (
        <WearFields
          name="between"
          label="What lies between before and after?"
          help={`${after.map((column) => column.heading).join(', ')} were read after it.`}
          value={answers.between}
          unanswered={isNeeded('between')}
          onWear={(between) => paste.answer({ between })}
        />
      ) : null}
      {counts
        ? null
        : open.map((column) => (
            <WearFields
              key={column.heading}
              name={`wear-${column.heading}`}
              label={`After what was ${column.heading} read?`}
              value={column.wear}
              mayBeUntouched
              unanswered={column.wear === undefined}
              onWear={(wear) => paste.mean(withWear(column, wear))}
            />
          ))}
      {asked.has('otherOrder') ? (
        <Pick
          name="otherOrder"
          label={asked.get('otherOrder')}
          help="Kept as the table says, the rows are judged by what was done, and the findings say that the work differed from the plan."
          options={yesNo('Yes: keep what the table says', 'No: I will correct the rows')}
          value={said(answers.otherOrder)}
          onChoose={(word) => paste.answer({ otherOrder: word === 'yes' })}
        />
      ) : null}
      {asked.has('blankRows') ? <BlankRows question={asked.get('blankRows') ?? ''} paste={paste} /> : null}
      {asked.has('twinsAreParts') ? (
        <Pick
          name="twinsAreParts"
          label={asked.get('twinsAreParts')}
          options={yesNo('Yes, parts of one skein', 'No, pieces of their own')}
          value={said(answers.twinsAreParts)}
          onChoose={(word) => paste.answer({ twinsAreParts: word === 'yes' })}
        />
      ) : null}
    </div>
  )
}

/** Questions that may stay open: what is taken to be so is said with each. */
export function MoreAsks({ check, paste }: AsksProps) {
  const { answers } = paste
  const asked = useAsked(check)
  return (
    <div class="paste-asks">
      {asked.has('ownVessel') ? (
        <Pick
          name="ownVessel"
          label="Did each piece have its own packet or jar?"
          help="And its own in the wash. Taken to be so unless you say no: then the pieces of one level in one session shared one, and count as one."
          options={yesNo('Yes, its own', 'No, shared')}
          value={said(answers.ownVessel)}
          onChoose={(word) => paste.answer({ ownVessel: word === 'yes' })}
        />
      ) : null}
      {asked.has('standard') ? <Standard check={check} paste={paste} /> : null}
      {check.columns.some((column) => column.as === 'L') ? <ReadWith paste={paste} /> : null}
    </div>
  )
}

/** Every question that was asked of this table, also those that are answered by now. */
function useAsked({ asks }: TableCheck): ReadonlyMap<Ask['key'], string> {
  const [asked, setAsked] = useState<ReadonlyMap<Ask['key'], string>>(new Map())
  useEffect(() => {
    setAsked((before) => new Map([...before, ...asks.map(({ key, question }) => [key, question] as const)]))
  }, [asks])
  return new Map([...asked, ...asks.map(({ key, question }) => [key, question] as const)])
}

function BlankRows({ question, paste }: { readonly question: string; readonly paste: Paste }) {
  const { blankRows } = paste.answers
  const isLost = blankRows !== undefined && blankRows !== 'not done'
  const [lost, setLost] = useState(isLost)
  return (
    <div class="stack">
      <Pick
        name="blankRows"
        label={question}
        options={[
          { value: 'not done', words: 'Not done yet' },
          { value: 'lost', words: 'Lost' },
        ]}
        value={lost ? 'lost' : (blankRows ?? '')}
        onChoose={(word) => {
          setLost(word === 'lost')
          paste.answer({ blankRows: word === 'lost' ? undefined : 'not done' })
        }}
      />
      {lost ? (
        <Field
          name="lostBecause"
          label="Lost because"
          help="As boiled dry, label washed off."
          value={isLost ? (blankRows ?? '') : ''}
          onInput={(reason) => paste.answer({ blankRows: reason.trim() === '' ? undefined : reason })}
        />
      ) : null}
    </div>
  )
}

function Standard({ check, paste }: { readonly check: TableCheck; readonly paste: Paste }) {
  const column = check.columns.findIndex(({ as }) => as === 'vessel')
  const names = [...new Set(paste.table?.rows.map((cells) => cells[column] ?? '') ?? [])]
    .filter((name) => name !== '')
    .slice(0, 200)
  return (
    <Choice
      name="standard"
      label="Is one of the batches the standard?"
      help="The one that the others are held against."
      options={[{ value: '', words: 'None of them' }, ...names.map((name) => ({ value: name, words: name }))]}
      value={paste.answers.standard ?? ''}
      onChoose={(name) => paste.answer({ standard: name === '' ? undefined : name })}
    />
  )
}

function withWear({ wear: _wear, ...column }: Column, wear: Wear | undefined): Column {
  return { ...column, ...(wear === undefined ? {} : { wear }) }
}

const yesNo = (yes: string, no: string) => [
  { value: 'yes', words: yes },
  { value: 'no', words: no },
]
const said = (answer: boolean | undefined) => (answer === undefined ? '' : answer ? 'yes' : 'no')
