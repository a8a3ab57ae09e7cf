import './field.css'
import './choice.css'
import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'
import { Chevron } from '#web/form/field.tsx'
import { type FieldFault, FieldNotes } from '#web/form/field-notes.tsx'

export type Option = { readonly value: string; readonly words: string; readonly help?: string }

export type ChoiceProps = {
  readonly name: string
  readonly label: ComponentChildren
  readonly help?: ComponentChildren
  readonly options: readonly Option[]
  readonly value?: string
  readonly onChoose?: (value: string) => void
  readonly faults?: readonly FieldFault[]
}

/** One of many, from a list that opens: `<Choice name="dye" label="Dye" options={dyes} />` */
export function Choice({ name, label, help, options, value, onChoose, faults = [] }: ChoiceProps) {
  const id = useId()
  const described = [help === undefined ? '' : `${id}-help`, faults.length > 0 ? `${id}-notes` : '']
    .join(' ')
    .trim()
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {help === undefined ? null : (
        <p class="field-help" id={`${id}-help`}>
          {help}
        </p>
      )}
      <div class={`field-box field-box-select${faults.length > 0 ? ' field-box-at-fault' : ''}`}>
        <select
          class="field-select"
          id={id}
          name={name}
          value={value}
          aria-describedby={described === '' ? undefined : described}
          aria-invalid={faults.length > 0 ? true : undefined}
          onChange={(event) => onChoose?.(event.currentTarget.value)}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.words}
            </option>
          ))}
        </select>
        <Chevron />
      </div>
      <FieldNotes id={`${id}-notes`} faults={faults} doubt={undefined} onChange={() => undefined} />
    </div>
  )
}

/** One of a few, all of them in sight: `<Pick name="smaller" label="Better is" options={[…]} value="smaller" />` */
export function Pick({ name, label, help, options, value, onChoose, faults = [] }: ChoiceProps) {
  const id = useId()
  return (
    <fieldset class="pick" aria-describedby={faults.length > 0 ? `${id}-notes` : undefined}>
      <legend class="choice-name">{label}</legend>
      {help === undefined ? null : <p class="field-help">{help}</p>}
      <div class="pick-options">
        {options.map((option) => (
          <label key={option.value} class="pick-option">
            <input
              type="radio"
              name={name}
              value={option.value}
              {...(onChoose === undefined
                ? { defaultChecked: option.value === value }
                : { checked: option.value === value })}
              onChange={() => onChoose?.(option.value)}
            />
            <span>
              {option.words}
              {option.help === undefined ? null : <span class="field-help">{option.help}</span>}
            </span>
          </label>
        ))}
      </div>
      <FieldNotes id={`${id}-notes`} faults={faults} doubt={undefined} onChange={() => undefined} />
    </fieldset>
  )
}

export type TickProps = {
  readonly name: string
  readonly label: ComponentChildren
  readonly ticked?: boolean
  readonly onTick?: (ticked: boolean) => void
}

/** Yes or no: `<Tick name="superwash" label="Superwash" />` */
export function Tick({ name, label, ticked = false, onTick }: TickProps) {
  return (
    <label class="pick-option">
      <input
        type="checkbox"
        name={name}
        {...(onTick === undefined ? { defaultChecked: ticked } : { checked: ticked })}
        onChange={(event) => onTick?.(event.currentTarget.checked)}
      />
      <span>{label}</span>
    </label>
  )
}
