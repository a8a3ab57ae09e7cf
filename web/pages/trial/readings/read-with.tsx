import { instrumentsOf } from '#web/api/readings.ts'
import { Choice } from '#web/form/choice.tsx'
import type { Paste } from '#web/pages/trial/readings/paste.ts'
import { useLoaded } from '#web/state/loaded.ts'

/** With what the colours were read; the noise of the finding hangs on it. */
export function ReadWith({ paste }: { readonly paste: Paste }) {
  const loaded = useLoaded('instruments', (signal) => instrumentsOf(signal))
  const instruments = loaded.kind === 'here' ? loaded.value.filter((it) => it.method !== 'eye') : []
  const { method, instrumentId } = paste.answers
  return (
    <Choice
      name="readWith"
      label="Read with"
      options={[
        { value: '', words: 'not said' },
        { value: 'instrument', words: 'an instrument' },
        { value: 'photo', words: 'photos with a card' },
        ...instruments.map((it) => ({ value: it.id, words: it.name })),
      ]}
      value={instrumentId ?? method ?? ''}
      onChoose={(chosen) => {
        const known = instruments.find((it) => it.id === chosen)
        if (known) paste.answer({ method: known.method, instrumentId: known.id })
        else
          paste.answer({
            instrumentId: undefined,
            method: chosen === 'instrument' || chosen === 'photo' ? chosen : undefined,
          })
      }}
    />
  )
}
