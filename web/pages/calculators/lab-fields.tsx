import { useState } from 'preact/hooks'
import { Field } from '#web/form/field.tsx'
import { faultsOf } from '#web/form/measure-field.tsx'
import { measured } from '#web/form/measured.ts'
import { threeOf } from '#web/pages/calculators/in-words.ts'
import { axes, type LabTyped } from '#web/pages/calculators/lab-typed.ts'

export type LabFieldsProps = {
  readonly legend: string
  readonly typed: LabTyped
  readonly onType: (typed: LabTyped) => void
}

/** L*, a* and b* beside each other; three numbers pasted into one box are spread over all. */
export function LabFields({ legend, typed, onType }: LabFieldsProps) {
  const [kept, setKept] = useState<Partial<LabTyped>>({})
  const type = (axis: keyof LabTyped, text: string): void => {
    const three = threeOf(text)
    onType(three === undefined ? { ...typed, [axis]: text } : { L: three[0], a: three[1], b: three[2] })
  }
  return (
    <fieldset class="lab-fields">
      <legend class="choice-name">{legend}</legend>
      <div class="fields">
        {axes.map((axis) => {
          const now = measured(typed[axis], '', { keptAs: '', variable: axis })
          const doubt = kept[axis] === typed[axis] ? undefined : now.doubt
          return (
            <Field
              key={axis}
              name={axis}
              label={`${axis}*`}
              kind="number"
              value={typed[axis]}
              onInput={(text) => type(axis, text)}
              faults={faultsOf(now, '', '', (words) => type(axis, words))}
              doubt={
                doubt === undefined
                  ? undefined
                  : { detail: doubt, onKeep: () => setKept({ ...kept, [axis]: typed[axis] }) }
              }
            />
          )
        })}
      </div>
    </fieldset>
  )
}
