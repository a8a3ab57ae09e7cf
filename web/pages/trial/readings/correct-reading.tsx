import { useEffect, useRef, useState } from 'preact/hooks'
import type { Reading } from '#api/contract/reading.ts'
import { faultsAt } from '#web/api/client.ts'
import { addReading, type SpotSent } from '#web/api/readings.ts'
import { Field } from '#web/form/field.tsx'
import { SpotFields } from '#web/pages/trial/readings/spot-fields.tsx'
import { Button } from '#web/parts/button.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'

export type CorrectReadingProps = {
  readonly trialId: string
  readonly reading: Reading
  readonly code: string
  readonly onKept: () => void
  readonly onLeave: () => void
}

/** A later reading takes the place of this one and says why; the old one stays to be seen. */
export function CorrectReading({ trialId, reading, code, onKept, onLeave }: CorrectReadingProps) {
  const heading = useRef<HTMLHeadingElement>(null)
  const [spots, setSpots] = useState<readonly SpotSent[]>(
    reading.spots.map(({ l, a, b }) => ({ l: String(l), a: String(a), b: String(b) })),
  )
  const [reason, setReason] = useState('')
  const [busy, setBusy] = useState(false)
  const [refused, setRefused] = useState<unknown>()
  useEffect(() => heading.current?.focus(), [])

  const keep = async (): Promise<void> => {
    setBusy(true)
    setRefused(undefined)
    try {
      await addReading(trialId, {
        skeinId: reading.skeinId,
        sittingId: reading.sittingId,
        spots,
        wet: reading.wet,
        ...(reading.wearFrom === 'entered' ? { wear: reading.wear } : {}),
        supersedesId: reading.id,
        reason,
      })
      onKept()
    } catch (cause) {
      setRefused(cause)
      setBusy(false)
    }
  }
  return (
    <form
      class="stack reading-form reading-correct"
      onSubmit={(event) => {
        event.preventDefault()
        if (!busy) void keep()
      }}
    >
      <h3 ref={heading} tabIndex={-1}>
        Correct a reading of skein {code}
      </h3>
      <p class="soft">The old one stays, with your reason.</p>
      <SpotFields spots={spots} refused={refused} onSpots={setSpots} />
      <Field
        name="reason"
        label="Reason"
        help="As typed 57 for 75."
        value={reason}
        onInput={setReason}
        faults={faultsAt(refused, '#/reason').map((detail) => ({ detail }))}
      />
      <ProblemNote refused={refused} />
      <div class="row">
        <Button kind="do" type="submit" busy={busy ? 'Keeping …' : undefined}>
          Keep the correction
        </Button>
        <Button onPress={onLeave}>Leave it as it was</Button>
      </div>
    </form>
  )
}
