import { boilingPoint } from '#api/science/bath/boiling-point.ts'
import { metres } from '#api/science/units.ts'
import { MeasureField } from '#web/form/measure-field.tsx'
import { figure } from '#web/form/number-words.ts'
import { Answer } from '#web/pages/calculators/answer.tsx'
import type { Studio } from '#web/pages/calculators/studio.ts'
import { useMeasures } from '#web/pages/calculators/use-measures.ts'
import { Note } from '#web/parts/note.tsx'

/** “95.0 °C (203 °F)” */
const inBoth = (celsius: number): string => `${figure(celsius, 1)} °C (${figure(celsius * 1.8 + 32, 0)} °F)`

/** How hot water and steam can get at an altitude. */
export function BoilingPoint({ studio }: { readonly studio: Studio }) {
  const fields = useMeasures('boiling', {
    altitude: {
      label: 'Altitude',
      words: 'the altitude',
      keptAs: 'm',
      units: ['m', 'ft'],
      amount: studio.usual.altitudeMetres,
      variable: 'altitude',
    },
  })
  const altitude = fields.value('altitude')
  const said = altitude === undefined ? '' : inBoth(boilingPoint(metres(altitude)))
  return (
    <div class="calculator">
      <div class="stack">
        <MeasureField {...fields.of('altitude')} />
      </div>
      <Answer title="Water boils at" missing={fields.missing('altitude')} copy={`Water boils at ${said}`}>
        <p class="answer-figure">{said}</p>
        <p>
          No open pot and no steam without pressure gets hotter. A rule of thumb: 1 °C less for each 300 m (2
          °F for each 1000 ft).
        </p>
        <Note title="Hot steam burns">
          Lift the lid away from you, use tongs, let a packet cool before you open it.
        </Note>
      </Answer>
    </div>
  )
}
