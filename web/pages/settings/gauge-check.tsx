import { useState } from 'preact/hooks'
import { type Noise, noise } from '#api/science/colour/noise.ts'
import { keepNoise } from '#web/api/instruments.ts'
import { Choice } from '#web/form/choice.tsx'
import { Field } from '#web/form/field.tsx'
import { GaugeFound } from '#web/pages/settings/gauge-found.tsx'
import { type GaugeRows, gaugeRows } from '#web/pages/settings/gauge-rows.ts'
import type { InstrumentsProps } from '#web/pages/settings/instruments.tsx'
import { useKeeping } from '#web/pages/settings/use-keeping.ts'
import { Button } from '#web/parts/button.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'
import { Section } from '#web/parts/section.tsx'

/** The noise of an instrument, from things that were left unchanged and read again. */
export function GaugeCheck({ instruments, onKept }: InstrumentsProps) {
  const keeping = useKeeping()
  const [id, setId] = useState(instruments[0]?.id ?? '')
  const [text, setText] = useState('')
  const rows = gaugeRows(text)
  const found = rows.things.length === 0 ? undefined : noise(rows.things.map(({ readings }) => readings))
  const instrument = instruments.find((it) => it.id === id) ?? instruments[0]
  const keep = async ({ sd }: Noise): Promise<void> => {
    if (instrument === undefined) return
    const kept = { sdL: sd.L, sdA: sd.a, sdB: sd.b, checkedOn: dayOf(new Date()) }
    if (await keeping.keep(() => keepNoise(instrument, kept))) onKept()
  }
  return (
    <Section
      title="Gauge check"
      level={3}
      says="Take a few skeins that nothing happens to. Read each again, every time newly placed, on two or three days."
    >
      <div class="stack">
        <Choice
          name="instrument"
          label="Instrument"
          options={instruments.map(({ id: value, name }) => ({ value, words: name }))}
          value={id}
          onChoose={(chosen) => {
            keeping.changed()
            setId(chosen)
          }}
        />
        <Field
          name="readings"
          label="Readings"
          kind="words"
          help="A line for each reading: the name of the thing, then L*, a*, b*. Paste from a spreadsheet as it is."
          value={text}
          onInput={(typed) => {
            keeping.changed()
            setText(typed)
          }}
          faults={faultsOf(rows)}
        />
        <GaugeFound rows={rows} found={found} />
        <ProblemNote refused={keeping.refused} />
        <div class="row">
          <Button
            waitsFor={found && found.sdd > 0 ? undefined : 'things read twice or more'}
            busy={keeping.busy ? 'Keeping …' : undefined}
            onPress={() => void (found && keep(found))}
          >
            Keep this noise
          </Button>
          <p role="status" class="soft">
            {keeping.kept ? 'Kept from the gauge check.' : ''}
          </p>
        </div>
      </div>
    </Section>
  )
}

function faultsOf({ unread }: GaugeRows) {
  return unread.slice(0, 3).map(({ line, text }) => ({
    detail: `Line ${line} is not a name and three numbers: “${text}”.`,
  }))
}

/** Today where the reader is, as it is kept. */
function dayOf(now: Date): string {
  const two = (value: number): string => String(value).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}
