import { rinseFall } from '#api/science/bath/rinse-dilution.ts'
import { millilitresPerGram } from '#api/science/units.ts'
import { MeasureField } from '#web/form/measure-field.tsx'
import { inFigures } from '#web/form/measured.ts'
import { Answer } from '#web/pages/calculators/answer.tsx'
import type { Studio } from '#web/pages/calculators/studio.ts'
import { useMeasures } from '#web/pages/calculators/use-measures.ts'
import { Note } from '#web/parts/note.tsx'
import { PlainTable } from '#web/parts/plain-table.tsx'

/** How fast rinse water would clear if rinsing only thinned out what is loose. */
export function RinseFall({ studio }: { readonly studio: Studio }) {
  const fields = useMeasures('rinse', {
    water: {
      label: 'Fresh water for each gram',
      words: 'the water',
      keptAs: 'mL/g',
      amount: '20',
      variable: 'rinseVolume',
    },
    wetness: {
      label: 'Wetness of the yarn',
      words: 'the wetness',
      keptAs: 'g/g',
      amount: studio.usual.yarnWetness,
      variable: 'yarnWetness',
    },
    rinses: { label: 'Rinses', words: 'the rinses', keptAs: '', amount: '4', variable: 'rinseCount' },
  })
  const [water, wetness, rinses] = [fields.value('water'), fields.value('wetness'), fields.value('rinses')]
  const fall =
    water === undefined || wetness === undefined || rinses === undefined
      ? []
      : rinseFall(rinses, wetness, millilitresPerGram(water)).map((share) => inPerCent(100 * share))
  return (
    <div class="calculator">
      <div class="stack">
        <MeasureField {...fields.of('water')} />
        <MeasureField {...fields.of('wetness')} says="about 1.2 squeezed, 0.5 spun" />
        <MeasureField {...fields.of('rinses')} />
      </div>
      <Answer
        title="Left of what was loose"
        missing={fields.missing('water', 'wetness', 'rinses')}
        copy={fall.map((left, count) => `${count}\t${left}`).join('\n')}
      >
        <p class="answer-figure">{fall.at(-1)}</p>
        <PlainTable
          name="Left after each rinse"
          data={{
            head: [{ words: 'Rinses' }, { words: 'Left, by dilution alone', figure: true }],
            rows: fall.map((left, count) => ({ key: String(count), cells: [String(count), left] })),
          }}
        />
        <Note title="A flatter fall means that dye is leaving the fibre">
          It is not set: more rinsing will not make it fast.
        </Note>
      </Answer>
    </div>
  )
}

function inPerCent(value: number): string {
  return value > 0 && value < 0.0001 ? 'below 0.0001 %' : `${inFigures(value)} %`
}
