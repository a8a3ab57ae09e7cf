import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import { directionInWords } from '#api/science/colour/direction-in-words.ts'
import type { Lab } from '#api/science/colour/lab.ts'
import { figure, listed, signed } from '#web/form/number-words.ts'
import { Answer } from '#web/pages/calculators/answer.tsx'
import { differenceAsText, formulasOf, howPlain, partsOf } from '#web/pages/calculators/difference.ts'
import { LabFields } from '#web/pages/calculators/lab-fields.tsx'
import { labTyped, useLab } from '#web/pages/calculators/lab-typed.ts'
import { DeltaE } from '#web/parts/delta-e.tsx'
import { Note } from '#web/parts/note.tsx'
import { PairTile } from '#web/parts/pair-tile.tsx'
import { PlainTable } from '#web/parts/plain-table.tsx'

/** How two colours differ: how much, by every usual formula, and which way. */
export function ColourDifference() {
  const [beforeTyped, typeBefore] = useLab('difference.before')
  const [afterTyped, typeAfter] = useLab('difference.after')
  const [before, after] = [labTyped(beforeTyped), labTyped(afterTyped)]
  const missing = [
    ...(before === undefined ? ['the colour before'] : []),
    ...(after === undefined ? ['the colour after'] : []),
  ]
  return (
    <div class="calculator">
      <div class="stack">
        <LabFields legend="Before" typed={beforeTyped} onType={typeBefore} />
        <LabFields legend="After" typed={afterTyped} onType={typeAfter} />
        <p class="soft small">Three numbers pasted into one box are spread over all three.</p>
      </div>
      <Answer
        title="The difference"
        missing={missing}
        copy={before && after ? differenceAsText(before, after) : undefined}
      >
        {before && after ? <Difference before={before} after={after} /> : null}
      </Answer>
    </div>
  )
}

function Difference({ before, after }: { readonly before: Lab; readonly after: Lab }) {
  const words = directionInWords(before, after)
  const dE00 = ciede2000(before, after)
  return (
    <>
      <p class="answer-figure">
        <DeltaE /> {figure(dE00)}
      </p>
      <p>
        {howPlain(dE00)}
        {words.length === 0 ? '' : ` After is ${listed(words)}.`}
      </p>
      <PairTile pair={{ before, after }} />
      <PlainTable
        name="By every formula"
        data={{
          head: [{ words: 'Formula' }, { words: 'Difference', figure: true }],
          rows: formulasOf(before, after).map(([name, value]) => ({
            key: name,
            cells: [name, figure(value)],
          })),
        }}
      />
      <PlainTable
        name="The parts of the difference"
        data={{
          head: [{ words: 'Part, after minus before' }, { words: 'Change', figure: true }],
          rows: partsOf(before, after).map(([name, value]) => ({
            key: name,
            cells: [name, signed(value, 2)],
          })),
        }}
      />
      <Note title="Average the readings first">
        Take the mean of L*, a* and b* over the places of a skein, then the difference. The mean of
        differences comes out too large.
      </Note>
    </>
  )
}
