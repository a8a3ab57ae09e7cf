import { type CitricKind, citricForVinegar } from '#api/science/bath/acid-swap.ts'
import { millilitres, percent } from '#api/science/units.ts'
import { MeasureField } from '#web/form/measure-field.tsx'
import { inFigures } from '#web/form/measured.ts'
import { Answer, linesAsText, Takes } from '#web/pages/calculators/answer.tsx'
import type { Studio } from '#web/pages/calculators/studio.ts'
import { useMeasures } from '#web/pages/calculators/use-measures.ts'
import { Note } from '#web/parts/note.tsx'

/** Citric acid that carries as much acid as a recipe's vinegar. */
export function SwapAcids({ studio }: { readonly studio: Studio }) {
  const fields = useMeasures('swap', {
    vinegar: {
      label: 'Vinegar',
      words: 'the vinegar',
      keptAs: 'mL',
      units: studio.volumeUnits,
      unit: studio.volume,
      least: 0,
    },
    strength: {
      label: 'Strength',
      words: 'the strength',
      keptAs: '%',
      amount: studio.usual.acidStrengthPercent,
      variable: 'acidStrength',
    },
  })
  const [vinegar, strength] = [fields.value('vinegar'), fields.value('strength')]
  const of = (kind: CitricKind): string =>
    inFigures(citricForVinegar(millilitres(vinegar ?? 0), percent(strength ?? 5), kind))
  const lines = [
    { words: 'citric acid, anhydrous', amount: of('citric'), unit: 'g' },
    { words: 'or its monohydrate', amount: of('citric-monohydrate'), unit: 'g' },
  ]
  return (
    <div class="calculator">
      <div class="stack">
        <MeasureField {...fields.of('vinegar')} />
        <MeasureField {...fields.of('strength')} />
      </div>
      <Answer title="Take" missing={fields.missing('vinegar', 'strength')} copy={linesAsText('Take', lines)}>
        <Takes lines={lines} />
        <div>
          <Note title="As much acid, but not the same pH">
            Near pH 4 citric acid has given up only about 1.2 of its three. See{' '}
            <a href="/calculators/acid-and-start-ph">Acid and start pH</a> for what the bath will read.
          </Note>
          <Note title="Household acid only, never with bleach">Air the room when it is hot.</Note>
        </div>
      </Answer>
    </div>
  )
}
