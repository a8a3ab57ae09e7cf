import { dyeWeight } from '#api/science/recipe/dye-weight.ts'
import { bathVolume } from '#api/science/recipe/liquor.ts'
import { stockVolume } from '#api/science/recipe/stock-volume.ts'
import { weighingError } from '#api/science/recipe/weighing-error.ts'
import { grams, millilitresPerGram, percentInVolume, percentOnFibre } from '#api/science/units.ts'
import { MeasureField } from '#web/form/measure-field.tsx'
import { inFigures } from '#web/form/measured.ts'
import { Answer, linesAsText, Takes } from '#web/pages/calculators/answer.tsx'
import { asVolume, shadeOf, stockInWords } from '#web/pages/calculators/in-words.ts'
import type { Studio } from '#web/pages/calculators/studio.ts'
import { useMeasures } from '#web/pages/calculators/use-measures.ts'
import { Note } from '#web/parts/note.tsx'

/** How much dye for a depth of shade, how much of a stock holds it, and the whole bath. */
export function DepthAndStock({ studio }: { readonly studio: Studio }) {
  const fields = useDepthFields(studio)
  const [yarn, depth, stock] = [fields.value('yarn'), fields.value('depth'), fields.value('stock')]
  const ratio = fields.value('ratio')
  const dye = yarn === undefined || depth === undefined ? 0 : dyeWeight(grams(yarn), percentOnFibre(depth))
  const lines = [
    { words: 'dye powder', amount: inFigures(dye), unit: 'g' },
    ...(yarn === undefined || depth === undefined || stock === undefined
      ? []
      : [
          {
            words: 'or stock',
            ...asVolume(stockVolume(grams(yarn), percentOnFibre(depth), percentInVolume(stock))),
          },
        ]),
    ...(yarn === undefined || ratio === undefined
      ? []
      : [{ words: 'bath in all', ...asVolume(bathVolume(grams(yarn), millilitresPerGram(ratio))) }]),
  ]
  const holds = [
    { key: 'depth', value: `${inFigures(depth ?? 0)} %` },
    ...(stock === undefined ? [] : [{ key: 'stock', value: `${inFigures(stock)} %` }]),
    ...(ratio === undefined ? [] : [{ key: 'liquor ratio', value: `${inFigures(ratio)} mL/g` }]),
  ]
  return (
    <div class="calculator">
      <div class="stack">
        <MeasureField {...fields.of('yarn')} />
        <MeasureField {...fields.of('depth')} says={depth === undefined ? undefined : shadeOf(depth)} />
        <div class="fields fields-in-pairs">
          <MeasureField
            {...fields.of('stock')}
            says={stock === undefined ? undefined : stockInWords(stock)}
          />
          <MeasureField {...fields.of('scale')} />
        </div>
        <MeasureField {...fields.of('ratio')} />
      </div>
      <Answer
        title="Take"
        missing={fields.missing('yarn', 'depth')}
        copy={linesAsText('Take', lines)}
        holds={holds}
      >
        <Takes lines={lines} />
        <div>
          <Weighed dye={dye} step={fields.value('scale')} />
          <Note title="Mask on for powder">
            No draught, damp paper under the scale; make the stock once. Dye pots and spoons are never for
            food again.
          </Note>
        </div>
      </Answer>
    </div>
  )
}

function useDepthFields({ weightUnits, weight, usual }: Studio) {
  return useMeasures('depth-and-stock', {
    yarn: {
      label: 'Dry yarn',
      words: 'the dry yarn',
      keptAs: 'g',
      units: weightUnits,
      unit: weight,
      variable: 'fibreMass',
    },
    depth: {
      label: 'Depth of shade',
      words: 'the depth',
      keptAs: '%',
      unitWords: '% of yarn',
      variable: 'depth',
    },
    stock: {
      label: 'Stock',
      words: 'the stock',
      keptAs: '%',
      amount: usual.stockPercent,
      variable: 'stockStrength',
    },
    scale: {
      label: 'Scale reads to',
      words: 'the scale',
      keptAs: 'g',
      amount: usual.scaleStepGrams,
      least: 0,
    },
    ratio: {
      label: 'Bath for each gram',
      words: 'the bath',
      keptAs: 'mL/g',
      amount: usual.liquorRatio,
      variable: 'liquorRatio',
    },
  })
}

/** How far off the powder may be on this scale; below five steps of it, what to do instead. */
function Weighed({ dye, step }: { readonly dye: number; readonly step: number | undefined }) {
  if (step === undefined || !(step > 0) || !(dye > 0)) return null
  const said = `±${inFigures(weighingError(grams(dye), step))} %`
  if (dye < 5 * step)
    return (
      <Note kind="doubt" title={`Less than 5 steps of this scale: ${said}`}>
        Take it from the stock, or weigh for more yarn at once.
      </Note>
    )
  return (
    <Note title={`Weighed on this scale: ${said}`}>
      Half a step of {inFigures(step)} g on {inFigures(dye)} g.
    </Note>
  )
}
