import './reading.css'
import { useState } from 'preact/hooks'
import type { Wear } from '#api/contract/wear-words.ts'
import { faultsAt } from '#web/api/client.ts'
import { addReading, addSitting, addSkein, type ReadingKept, type SpotSent } from '#web/api/readings.ts'
import { Choice, Pick } from '#web/form/choice.tsx'
import { Field } from '#web/form/field.tsx'
import { figure, listed } from '#web/form/number-words.ts'
import type { ReadingsSeen } from '#web/pages/trial/readings/readings-loaded.ts'
import { blankSpot, SpotFields } from '#web/pages/trial/readings/spot-fields.tsx'
import { WearFields } from '#web/pages/trial/readings/wear-fields.tsx'
import { Button } from '#web/parts/button.tsx'
import { Note } from '#web/parts/note.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'

const ofItsOwn = 'new'

export type ReadSkeinProps = {
  readonly trialId: string
  readonly seen: ReadingsSeen
  readonly onKept: () => void
}

/** One reading of one skein. After it is kept the next skein can be read in the same sitting. */
export function ReadSkein({ trialId, seen, onKept }: ReadSkeinProps) {
  const skeins = seen.skeins.items.filter((skein) => skein.status !== 'lost')
  const sittings = seen.sittings.items.filter((sitting) => sitting.method !== 'eye')
  const [chosenSkein, setSkein] = useState<string | undefined>()
  const skeinId = chosenSkein ?? skeins[0]?.id ?? ofItsOwn
  const [code, setCode] = useState('')
  const [chosenSitting, setSitting] = useState<string | undefined>()
  const sittingId = chosenSitting ?? sittings.at(-1)?.id ?? ofItsOwn
  const [label, setLabel] = useState('')
  const [method, setMethod] = useState<'instrument' | 'photo'>('instrument')
  const [spots, setSpots] = useState<readonly SpotSent[]>([blankSpot])
  const [wet, setWet] = useState(false)
  const [wearFrom, setWearFrom] = useState<'record' | 'said'>('record')
  const [wear, setWear] = useState<Wear | undefined>()
  const [busy, setBusy] = useState(false)
  const [refused, setRefused] = useState<unknown>()
  const [kept, setKept] = useState<{ reading: ReadingKept; code: string } | undefined>()

  const keep = async (): Promise<void> => {
    setBusy(true)
    setRefused(undefined)
    setKept(undefined)
    try {
      const skein =
        skeinId === ofItsOwn ? await addSkein(trialId, code) : skeins.find((it) => it.id === skeinId)
      if (skein) setSkein(skein.id)
      const sitting = sittingId === ofItsOwn ? (await addSitting({ trialId, method, label })).id : sittingId
      setSitting(sitting)
      const reading = await addReading(trialId, {
        skeinId: skein?.id ?? skeinId,
        sittingId: sitting,
        spots,
        wet,
        ...(wearFrom === 'said' && wear !== undefined ? { wear } : {}),
      })
      setKept({ reading, code: skein?.code ?? '' })
      setSpots([blankSpot])
      onKept()
    } catch (cause) {
      setRefused(cause)
    } finally {
      setBusy(false)
    }
  }
  const said = (pointer: string) => faultsAt(refused, pointer).map((detail) => ({ detail }))
  return (
    <form
      class="stack reading-form"
      onSubmit={(event) => {
        event.preventDefault()
        if (!busy) void keep()
      }}
    >
      <div class="fields">
        <Choice
          name="skein"
          label="Skein"
          options={[
            ...skeins.map((skein) => ({ value: skein.id, words: `${skein.code}, ${skein.role}` })),
            { value: ofItsOwn, words: 'a skein that is not listed' },
          ]}
          value={skeinId}
          onChoose={setSkein}
          faults={said('#/skeinId')}
        />
        {skeinId === ofItsOwn ? (
          <Field name="code" label="Its code" value={code} onInput={setCode} faults={said('#/code')} />
        ) : null}
        <Choice
          name="sitting"
          label="Sitting"
          options={[
            ...sittings.map((sitting) => ({ value: sitting.id, words: sitting.label })),
            { value: ofItsOwn, words: 'a new sitting' },
          ]}
          value={sittingId}
          onChoose={setSitting}
          faults={said('#/sittingId')}
        />
        {sittingId === ofItsOwn ? (
          <>
            <Field
              name="label"
              label="Name of the sitting"
              help="As before, or after 3 washes."
              value={label}
              onInput={setLabel}
              faults={said('#/label')}
            />
            <Choice
              name="method"
              label="Read with"
              options={[
                { value: 'instrument', words: 'an instrument' },
                { value: 'photo', words: 'a photo with a card' },
              ]}
              value={method}
              onChoose={(chosen) => setMethod(chosen === 'photo' ? 'photo' : 'instrument')}
            />
          </>
        ) : null}
      </div>
      <SpotFields spots={spots} refused={refused} onSpots={setSpots} />
      <Pick
        name="wet"
        label="It was"
        options={[
          { value: 'dry', words: 'dry' },
          { value: 'wet', words: 'wet' },
        ]}
        value={wet ? 'wet' : 'dry'}
        onChoose={(word) => setWet(word === 'wet')}
      />
      <Pick
        name="wearFrom"
        label="What it had been through"
        options={[
          { value: 'record', words: 'as the record of its washes and light says; without one, untouched' },
          { value: 'said', words: 'I say it' },
        ]}
        value={wearFrom}
        onChoose={(word) => setWearFrom(word === 'said' ? 'said' : 'record')}
      />
      {wearFrom === 'said' ? (
        <WearFields name="wear" label="What" value={wear} mayBeUntouched onWear={setWear} />
      ) : null}
      <ProblemNote refused={refused} />
      {kept === undefined ? null : <Kept {...kept} />}
      <div class="row">
        <Button
          type="submit"
          busy={busy ? 'Keeping …' : undefined}
          waitsFor={wearFrom === 'said' && wear === undefined ? 'what it had been through' : undefined}
        >
          Keep the reading
        </Button>
      </div>
    </form>
  )
}

function Kept({ reading, code }: { readonly reading: ReadingKept; readonly code: string }) {
  const mean = listed([reading.meanL, reading.meanA, reading.meanB].map((value) => figure(value, 1)))
  return (
    <div role="status">
      <Note title={`Skein ${code} is read: ${mean}`}>
        {reading.doubts.map(({ detail }) => (
          <p key={detail}>{detail}</p>
        ))}
      </Note>
    </div>
  )
}
