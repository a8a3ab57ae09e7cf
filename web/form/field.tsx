import './field.css'
import type { ComponentChildren } from 'preact'
import { useId, useRef } from 'preact/hooks'
import { type FieldDoubt, type FieldFault, FieldNotes } from '#web/form/field-notes.tsx'

export type FieldUnits = {
  readonly name: string
  readonly value: string
  readonly options: readonly string[]
  readonly onChoose?: (unit: string) => void
}

export type FieldProps = {
  readonly name: string
  readonly label: ComponentChildren
  readonly help?: ComponentChildren
  /** What stands in the box at first; the field keeps what is typed. With `onInput` the page may keep it itself. */
  readonly value?: string
  readonly onInput?: (typed: string) => void
  /** `number` brings up the keys for figures; commas are taken as well as points. */
  readonly kind?: 'text' | 'number' | 'date' | 'time' | 'datetime-local' | 'words' | 'password'
  /** A fixed unit after the hair line, or a choice of them. */
  readonly unit?: ComponentChildren
  readonly units?: FieldUnits
  /** Below the box: “counts as 59.1 mL; kept as ¼ US cup”. */
  readonly countsAs?: ComponentChildren
  readonly faults?: readonly FieldFault[]
  readonly doubt?: FieldDoubt | undefined
  readonly required?: boolean
}

/**
 * One thing to fill in: label, help, box, unit, what it counts as, and what is wrong or doubtful about it.
 * `<Field name="margin" label="Margin, extra loss" kind="number" unit={<DeltaE />} faults={faults} />`
 */
export function Field(props: FieldProps) {
  const { name, label, help, kind = 'text', unit, units, countsAs, faults = [], doubt } = props
  const id = useId()
  const input = useRef<HTMLInputElement & HTMLTextAreaElement>(null)
  const described = [
    help === undefined ? '' : `${id}-help`,
    countsAs === undefined ? '' : `${id}-counts`,
    faults.length > 0 || doubt !== undefined ? `${id}-notes` : '',
  ]
    .filter((part) => part !== '')
    .join(' ')
  const common = {
    id,
    name,
    ref: input,
    autoComplete: kind === 'password' ? 'current-password' : 'off',
    'aria-describedby': described === '' ? undefined : described,
    'aria-invalid': faults.length > 0 ? true : undefined,
    'aria-required': props.required === true ? true : undefined,
    onInput: (event: { currentTarget: { value: string } }) => props.onInput?.(event.currentTarget.value),
    ...(props.value === undefined
      ? {}
      : props.onInput === undefined
        ? { defaultValue: props.value }
        : { value: props.value }),
  } as const

  return (
    <div class="field">
      <label for={id}>{label}</label>
      {help === undefined ? null : (
        <p class="field-help" id={`${id}-help`}>
          {help}
        </p>
      )}
      <div class={boxClass(faults.length > 0, doubt !== undefined)}>
        {kind === 'words' ? (
          <textarea rows={3} {...common} />
        ) : kind === 'text' || kind === 'number' ? (
          <input type="text" inputMode={kind === 'number' ? 'decimal' : undefined} {...common} />
        ) : (
          <input type={kind} {...common} />
        )}
        {unit === undefined ? null : <span class="field-unit">{unit}</span>}
        {units === undefined ? null : <UnitChoice units={units} of={label} />}
      </div>
      {countsAs === undefined ? null : (
        <p class="field-help" id={`${id}-counts`}>
          {countsAs}
        </p>
      )}
      <FieldNotes id={`${id}-notes`} faults={faults} doubt={doubt} onChange={() => input.current?.select()} />
    </div>
  )
}

function boxClass(atFault: boolean, inDoubt: boolean): string {
  if (atFault) return 'field-box field-box-at-fault'
  return inDoubt ? 'field-box field-box-in-doubt' : 'field-box'
}

function UnitChoice({ units, of }: { readonly units: FieldUnits; readonly of: ComponentChildren }) {
  return (
    <span class="field-choice">
      <select
        name={units.name}
        value={units.value}
        aria-label={typeof of === 'string' ? `Unit of ${of.toLowerCase()}` : 'Unit'}
        onChange={(event) => units.onChoose?.(event.currentTarget.value)}
      >
        {units.options.map((option) => (
          <option key={option} value={option}>
            {option}
          </option>
        ))}
      </select>
      <Chevron />
    </span>
  )
}

/** The small angle that says “one of several”. */
export function Chevron() {
  return (
    <svg class="field-chevron" width="12" height="8" viewBox="0 0 12 8" aria-hidden="true">
      <path d="M1 1.5L6 6.5L11 1.5" fill="none" stroke="currentColor" stroke-width="1.5" />
    </svg>
  )
}
