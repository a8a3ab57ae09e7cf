import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { type Wear, wearAxes, wearAxisNames, wearInWords } from '#api/contract/wear-words.ts'
import { Choice } from '#web/form/choice.tsx'
import { Field } from '#web/form/field.tsx'

export type WearFieldsProps = {
  readonly name: string
  readonly label: string
  readonly help?: ComponentChildren
  readonly value: Wear | undefined
  /** Untouched may be chosen: read before anything was done to it. */
  readonly mayBeUntouched?: boolean
  /** The answer is still needed. */
  readonly unanswered?: boolean
  /** Undefined while it is not said whole. */
  readonly onWear: (wear: Wear | undefined) => void
}

/** What a piece has been through: which wash, rub or light, and how much of it. Never guessed. */
export function WearFields({
  name,
  label,
  help,
  value,
  mayBeUntouched,
  unanswered,
  onWear,
}: WearFieldsProps) {
  const [first] = Object.entries(value ?? {})
  const [axis, setAxis] = useState(first?.[0] ?? (value === undefined ? '' : 'untouched'))
  const [amount, setAmount] = useState(first === undefined ? '' : String(first[1]))

  const tell = (onAxis: string, typed: string): void => {
    setAxis(onAxis)
    setAmount(typed)
    const number = Number(typed.trim().replace(',', '.'))
    if (onAxis === 'untouched') onWear({})
    else if (onAxis === '' || typed.trim() === '' || !(number > 0)) onWear(undefined)
    else onWear({ [onAxis]: number })
  }
  const isWrong = amount.trim() !== '' && !(Number(amount.trim().replace(',', '.')) > 0)
  return (
    <div class={unanswered ? 'paste-ask paste-ask-open' : 'paste-ask'}>
      <fieldset>
        <legend class="choice-name">{label}</legend>
        {help === undefined ? null : <p class="field-help">{help}</p>}
        <p class="field-help">
          <a href="/method#protocols">What each test is</a>
        </p>
        <div class="paste-wear">
          <Choice
            name={`${name}-axis`}
            label="What"
            options={[
              { value: '', words: 'Choose' },
              ...(mayBeUntouched ? [{ value: 'untouched', words: 'nothing: untouched' }] : []),
              ...wearAxisNames.map((it) => ({ value: it, words: wearAxes[it].several })),
            ]}
            value={axis}
            onChoose={(chosen) => tell(chosen, amount)}
          />
          {axis === 'untouched' ? null : (
            <Field
              name={`${name}-amount`}
              label="How many"
              kind="number"
              value={amount}
              onInput={(typed) => tell(axis, typed)}
              faults={isWrong ? [{ detail: 'A number above 0.' }] : []}
            />
          )}
        </div>
        {value === undefined ? null : <p class="field-help">{wearInWords(value)}</p>}
      </fieldset>
    </div>
  )
}
