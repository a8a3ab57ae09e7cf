import { bounds } from '#api/contract/bounds.ts'
import type { Fault } from '#api/contract/problem.ts'
import { Choice, Pick } from '#web/form/choice.tsx'
import { Field } from '#web/form/field.tsx'
import {
  type FactorDraft,
  levelOfPointer,
  settable,
  stageOptions,
  withVariable,
} from '#web/pages/trial/factor-draft.ts'
import { LevelsEditor } from '#web/pages/trial/levels-editor.tsx'

export type FactorFormProps = {
  readonly draft: FactorDraft
  readonly onChange: (draft: FactorDraft) => void
  /** What the server found at fault, pointers as of a factor. */
  readonly faults?: readonly Fault[]
}

const variables = [
  { value: '', words: 'Something of my own' },
  ...settable.map((key) => ({
    value: key,
    words: bounds[key].unit === '' ? bounds[key].label : `${bounds[key].label}, ${bounds[key].unit}`,
  })),
]

const kinds = [
  { value: 'category', words: 'words, as “usual” and “shortcut”' },
  { value: 'number', words: 'numbers' },
]

/** What is varied: a variable of the trade or one’s own, its levels, and which of them is the reference. */
export function FactorForm({ draft, onChange, faults = [] }: FactorFormProps) {
  const at = (pointer: string) =>
    faults.filter((fault) => fault.pointer === pointer).map(({ detail }) => ({ detail }))
  const ofLevels = faults.filter(({ pointer }) => pointer.startsWith('#/levels'))
  const levelsAtFault = ofLevels.flatMap(({ pointer }) => levelOfPointer(draft, pointer)?.id ?? [])
  const own = draft.variable === ''
  return (
    <div class="stack">
      <div class="fields">
        <Choice
          name="variable"
          label="Variable"
          options={variables}
          value={draft.variable}
          onChoose={(variable) => onChange(withVariable(draft, variable))}
          {...(own ? {} : { faults: at('#/key') })}
        />
        {own ? (
          <>
            <Field
              name="ownName"
              label="What you call it"
              value={draft.ownName}
              onInput={(ownName) => onChange({ ...draft, ownName })}
              faults={at('#/key')}
              required
            />
            <Choice
              name="stage"
              label="Given"
              options={stageOptions}
              value={draft.stage}
              onChoose={(stage) => onChange({ ...draft, stage: stage as FactorDraft['stage'] })}
              faults={at('#/stage')}
            />
          </>
        ) : null}
      </div>
      {own ? (
        <Pick
          name="kind"
          label="Its levels are"
          options={kinds}
          value={draft.kind}
          onChoose={(kind) => onChange({ ...draft, kind: kind as FactorDraft['kind'] })}
        />
      ) : null}
      {own && draft.kind === 'number' ? (
        <div class="fields">
          <Field
            name="ownUnit"
            label="Unit"
            value={draft.ownUnit}
            onInput={(ownUnit) => onChange({ ...draft, ownUnit })}
            faults={at('#/unit')}
          />
        </div>
      ) : null}
      <LevelsEditor
        draft={draft}
        onChange={onChange}
        faults={ofLevels.map(({ detail }) => ({ detail }))}
        atFault={levelsAtFault}
      />
    </div>
  )
}
