import type { Instrument } from '#api/contract/instrument.ts'
import { AddInstrument } from '#web/pages/settings/add-instrument.tsx'
import { GaugeCheck } from '#web/pages/settings/gauge-check.tsx'
import { InstrumentTable } from '#web/pages/settings/instrument-table.tsx'
import { Section } from '#web/parts/section.tsx'

export type InstrumentsProps = {
  readonly instruments: readonly Instrument[]
  readonly onKept: () => void
}

/** The ways of measuring, with their noise; one more; and the gauge check that finds the noise. */
export function Instruments({ instruments, onKept }: InstrumentsProps) {
  return (
    <Section
      title="Instruments and their noise"
      says="SD: how much one placing differs from the next on a thing that has not changed. Noise looks like fading, so every verdict takes it off."
    >
      <div class="stack">
        {instruments.length === 0 ? (
          <p>No instrument yet. Add the one you read with; until then the noise is a planning value.</p>
        ) : (
          <InstrumentTable instruments={instruments} onKept={onKept} />
        )}
        <div class="two-columns">
          <AddInstrument onKept={onKept} />
          {instruments.length === 0 ? null : <GaugeCheck instruments={instruments} onKept={onKept} />}
        </div>
      </div>
    </Section>
  )
}
