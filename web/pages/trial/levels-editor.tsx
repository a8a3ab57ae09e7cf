import './levels.css'
import { useId, useLayoutEffect, useRef } from 'preact/hooks'
import { type FieldFault, FieldNotes } from '#web/form/field-notes.tsx'
import {
  type FactorDraft,
  unitOf,
  withLabel,
  withLevel,
  withoutLevel,
} from '#web/pages/trial/factor-draft.ts'

export type LevelsEditorProps = {
  readonly draft: FactorDraft
  readonly onChange: (draft: FactorDraft) => void
  readonly faults?: readonly FieldFault[]
  /** Levels that are at fault, by id. */
  readonly atFault?: readonly string[]
}

/** The levels as boxes in a row. Enter adds one, Backspace in an empty one takes it away; each has its own button too. */
export function LevelsEditor({ draft, onChange, faults = [], atFault = [] }: LevelsEditorProps) {
  const id = useId()
  const row = useRef<HTMLUListElement>(null)
  const focusLast = useRef(false)
  const unit = unitOf(draft)
  // Before the next key is handled: what is typed straight after Enter belongs to the new level.
  useLayoutEffect(() => {
    if (!focusLast.current) return
    focusLast.current = false
    const inputs = row.current?.querySelectorAll<HTMLInputElement>('input.level-input')
    inputs?.[inputs.length - 1]?.focus()
  }, [draft.levels.length])

  const add = (): void => {
    focusLast.current = true
    onChange(withLevel(draft))
  }
  const remove = (level: string): void => {
    if (draft.levels.length <= 1) return
    focusLast.current = true
    onChange(withoutLevel(draft, level))
  }
  const words = draft.kind === 'category'
  return (
    <fieldset class="levels" aria-describedby={faults.length > 0 ? `${id}-notes` : `${id}-help`}>
      <legend class="choice-name">Levels{unit === '' ? '' : `, ${unit}`}</legend>
      <p class="field-help" id={`${id}-help`}>
        Tick the one that the others are held against: the reference.
      </p>
      <ul class="level-row plain-list" ref={row}>
        {draft.levels.map((level, place) => {
          const name = level.label.trim() === '' ? `level ${place + 1}` : level.label.trim()
          const reference = draft.reference === level.id
          return (
            <li
              key={level.id}
              class={`level-box${reference ? ' level-box-reference' : ''}${atFault.includes(level.id) ? ' level-box-at-fault' : ''}`}
            >
              <input
                class={words ? 'level-input level-input-words' : 'level-input'}
                type="text"
                inputMode={words ? undefined : 'decimal'}
                autoComplete="off"
                aria-label={`Level ${place + 1}`}
                aria-invalid={atFault.includes(level.id) ? true : undefined}
                value={level.label}
                onInput={(event) => onChange(withLabel(draft, level.id, event.currentTarget.value))}
                onKeyDown={(event) => {
                  if (event.key === 'Enter') {
                    event.preventDefault()
                    add()
                  } else if (event.key === 'Backspace' && level.label === '') {
                    event.preventDefault()
                    remove(level.id)
                  }
                }}
              />
              <label class="level-reference">
                <input
                  type="radio"
                  name={`${id}-reference`}
                  aria-label={`${name} is the reference`}
                  checked={reference}
                  onChange={() => onChange({ ...draft, reference: level.id })}
                />
                <span aria-hidden="true">{reference ? 'reference' : ''}</span>
              </label>
              {draft.levels.length > 1 ? (
                <button
                  type="button"
                  class="level-remove"
                  aria-label={`Take ${name} away`}
                  onClick={() => remove(level.id)}
                >
                  <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
                    <path d="M2 2L10 10M10 2L2 10" stroke="currentColor" stroke-width="1.75" />
                  </svg>
                </button>
              ) : null}
            </li>
          )
        })}
        <li>
          <button type="button" class="level-add" onClick={add}>
            add
            <span class="visually-hidden"> a level</span>
          </button>
        </li>
      </ul>
      <FieldNotes id={`${id}-notes`} faults={faults} doubt={undefined} onChange={() => undefined} />
    </fieldset>
  )
}
