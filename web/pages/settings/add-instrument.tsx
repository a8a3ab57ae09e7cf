import { useRef, useState } from 'preact/hooks'
import { faultsAt } from '#web/api/client.ts'
import { addInstrument } from '#web/api/instruments.ts'
import { Choice } from '#web/form/choice.tsx'
import { Field } from '#web/form/field.tsx'
import { useKeeping } from '#web/pages/settings/use-keeping.ts'
import { Button } from '#web/parts/button.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'
import { Section } from '#web/parts/section.tsx'
import { newId } from '#web/state/new-id.ts'

const methods = [
  { value: 'instrument', words: 'Instrument' },
  { value: 'photo', words: 'Photo with a card' },
  { value: 'eye', words: 'Eye with a grey scale' },
] as const
type Method = (typeof methods)[number]['value']

const sds = [
  { key: 'sdL', label: 'SD L*' },
  { key: 'sdA', label: 'SD a*' },
  { key: 'sdB', label: 'SD b*' },
] as const
const blank = { name: '', sdL: '', sdA: '', sdB: '' }

/** One more way of measuring. */
export function AddInstrument({ onKept }: { readonly onKept: () => void }) {
  const keeping = useKeeping()
  const [typed, setTyped] = useState(blank)
  const [method, setMethod] = useState<Method>('instrument')
  // Chosen once: a second press sends the same instrument, not another one.
  const id = useRef(newId())
  const type = (changes: Partial<typeof blank>): void => {
    keeping.changed()
    setTyped({ ...typed, ...changes })
  }
  const add = async (): Promise<void> => {
    const isEntered = sds.some(({ key }) => typed[key].trim() !== '')
    const sdFrom = isEntered ? 'entered' : 'planning value'
    if (!(await keeping.keep(() => addInstrument({ ...typed, id: id.current, method, sdFrom })))) return
    id.current = newId()
    setTyped(blank)
    onKept()
  }
  const faults = (pointer: string) => faultsAt(keeping.refused, pointer).map((detail) => ({ detail }))
  return (
    <Section title="Add an instrument" level={3}>
      <form
        class="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          void add()
        }}
      >
        <Field
          name="name"
          label="Name"
          value={typed.name}
          onInput={(name) => type({ name })}
          faults={faults('#/name')}
        />
        <Choice
          name="method"
          label="Method"
          options={methods}
          value={method}
          onChoose={(value) => setMethod(methods.find((it) => it.value === value)?.value ?? 'instrument')}
        />
        <div class="fields settings-three">
          {sds.map(({ key, label }) => (
            <Field
              key={key}
              name={key}
              label={label}
              kind="number"
              value={typed[key]}
              onInput={(sd) => type({ [key]: sd })}
              faults={faults(`#/${key}`)}
            />
          ))}
        </div>
        <p class="soft small">Blank is not known. A gauge check finds them.</p>
        <ProblemNote refused={keeping.refused} />
        <div class="row">
          <Button type="submit" busy={keeping.busy ? 'Keeping …' : undefined}>
            Add it
          </Button>
          <p role="status" class="soft">
            {keeping.kept ? 'Kept.' : ''}
          </p>
        </div>
      </form>
    </Section>
  )
}
