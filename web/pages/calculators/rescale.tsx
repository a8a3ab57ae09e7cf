import { useState } from 'preact/hooks'
import { rescaleRecipe } from '#api/science/recipe/rescale.ts'
import { grams, millilitres, millilitresPerGram } from '#api/science/units.ts'
import { MeasureField } from '#web/form/measure-field.tsx'
import { inFigures } from '#web/form/measured.ts'
import { Answer, linesAsText, Takes } from '#web/pages/calculators/answer.tsx'
import { asVolume } from '#web/pages/calculators/in-words.ts'
import { PartFields } from '#web/pages/calculators/part-fields.tsx'
import { blankPart, type Part, recipeOf } from '#web/pages/calculators/rescale-parts.ts'
import type { Studio } from '#web/pages/calculators/studio.ts'
import { useMeasures } from '#web/pages/calculators/use-measures.ts'
import { Note } from '#web/parts/note.tsx'

/** What was typed stays, also when one comes back. */
let partsBefore: readonly Part[] = [blankPart(0), blankPart(1)]

/** A recipe for another weight of yarn: what goes up with it, whether the pot holds it, whether the scale sees it. */
export function Rescale({ studio }: { readonly studio: Studio }) {
  const [parts, setParts] = useState(partsBefore)
  const keep = (next: readonly Part[]): void => {
    partsBefore = next
    setParts(next)
  }
  const fields = useRescaleFields(studio)
  const [from, to] = [fields.value('from'), fields.value('to')]
  const recipe = from === undefined ? [] : recipeOf(parts, from)
  const [ratio, pot, scale] = [fields.value('ratio'), fields.value('pot'), fields.value('scale')]
  const rescaled =
    to === undefined
      ? undefined
      : rescaleRecipe(recipe, grams(to), {
          ...(ratio === undefined ? {} : { liquorRatio: millilitresPerGram(ratio) }),
          ...(pot === undefined || !(pot > 0) ? {} : { pot: millilitres(pot * 1000) }),
          ...(scale === undefined || !(scale > 0) ? {} : { scaleStep: grams(scale) }),
        })
  const lines = [
    ...(rescaled?.lines ?? []).map(({ name, amount, measure }) =>
      measure === 'mL'
        ? { words: name, ...asVolume(amount) }
        : { words: name, amount: inFigures(amount), unit: 'g' },
    ),
    ...(rescaled?.bath === undefined ? [] : [{ words: 'bath in all', ...asVolume(rescaled.bath) }]),
  ]
  const missing = [
    ...fields.missing('from', 'to'),
    ...(from !== undefined && recipe.length === 0 ? ['an amount of the recipe'] : []),
  ]
  return (
    <div class="calculator">
      <div class="stack">
        <div class="fields fields-in-pairs">
          <MeasureField {...fields.of('from')} />
          <MeasureField {...fields.of('to')} />
        </div>
        <PartFields parts={parts} units={[...studio.weightUnits, ...studio.volumeUnits]} onParts={keep} />
        <div class="fields fields-in-pairs">
          <MeasureField {...fields.of('ratio')} />
          <MeasureField {...fields.of('pot')} />
          <MeasureField {...fields.of('scale')} />
        </div>
      </div>
      <Answer
        title="Take"
        missing={missing}
        copy={linesAsText(`Take, for ${inFigures(to ?? 0)} g of yarn`, lines)}
      >
        <Takes lines={lines} />
        <div>
          {rescaled?.cautions.map((caution) => (
            <Note key={caution} kind="doubt" title={caution} />
          ))}
          {rescaled?.pot === undefined ? null : (
            <Note title={`The bath fills ${inFigures(rescaled.pot.filled)} % of the pot`}>
              This pot takes {inFigures(rescaled.pot.mostFibre)} g of yarn, three quarters full.
            </Note>
          )}
          <Note title="Times and temperatures stay as they are">
            A bigger pot heats and cools more slowly: stamp the times again.
          </Note>
        </div>
      </Answer>
    </div>
  )
}

function useRescaleFields({ weightUnits, weight, volumeUnits, usual }: Studio) {
  const yarn = { keptAs: 'g', units: weightUnits, unit: weight, variable: 'fibreMass' } as const
  return useMeasures('rescale', {
    from: { label: 'The recipe is for', words: 'the yarn of the recipe', ...yarn },
    to: { label: 'Make it for', words: 'the yarn to dye', ...yarn },
    ratio: {
      label: 'Bath for each gram',
      words: 'the bath',
      keptAs: 'mL/g',
      amount: usual.liquorRatio,
      variable: 'liquorRatio',
    },
    pot: {
      label: 'Pot, to the rim',
      words: 'the pot',
      keptAs: 'L',
      units: ['L', ...volumeUnits.filter((unit) => unit !== 'L')],
      least: 0,
    },
    scale: {
      label: 'Scale reads to',
      words: 'the scale',
      keptAs: 'g',
      amount: usual.scaleStepGrams,
      least: 0,
    },
  })
}
