import { boilingPoint } from '#api/science/bath/boiling-point.ts'
import { metres } from '#api/science/units.ts'
import { MeasureField } from '#web/form/measure-field.tsx'
import { figure } from '#web/form/number-words.ts'
import { Answer } from '#web/pages/calculators/answer.tsx'
import type { Studio } from '#web/pages/calculators/studio.ts'
import { useMeasures } from '#web/pages/calculators/use-measures.ts'
import { Note } from '#web/parts/note.tsx'

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
  const said = altitude === undefined ? '' : `${figure(boilingPoint(metres(altitude)), 1)} °C`
  return (
    <div class="calculator">
      <div class="stack">
        <MeasureField {...fields.of('altitude')} />
      </div>
      <Answer title="Water boils at" missing={fields.missing('altitude')} copy={`Water boils at ${said}`}>
        <p class="answer-figure">{said}</p>
        <p>
          No open pot and no steam without pressure gets hotter. A rule of thumb: 1 °C less for each 300 m.
        </p>
        <Note title="Hot steam burns">
          Lift the lid away from you, use tongs, let a packet cool before you open it.
        </Note>
      </Answer>
    </div>
  )
}
