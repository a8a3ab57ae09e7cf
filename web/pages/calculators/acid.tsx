import { useState } from 'preact/hooks'
import { doubtOf } from '#api/contract/bounds.ts'
import { startPh } from '#api/science/bath/start-ph.ts'
import { Choice } from '#web/form/choice.tsx'
import { MeasureField } from '#web/form/measure-field.tsx'
import { inFigures } from '#web/form/measured.ts'
import { figure } from '#web/form/number-words.ts'
import { AcidCurve } from '#web/pages/calculators/acid-curve.tsx'
import { bathOf, useAcidFields } from '#web/pages/calculators/acid-fields.ts'
import { type Acid, acids, amountsInWords, phInWords } from '#web/pages/calculators/acid-words.ts'
import { Answer } from '#web/pages/calculators/answer.tsx'
import type { Studio } from '#web/pages/calculators/studio.ts'
import { Note } from '#web/parts/note.tsx'

let acidBefore: Acid = 'acetic'

/** What the bath reads before the yarn goes in, from the acid and the water. */
export function AcidAndStartPh({ studio }: { readonly studio: Studio }) {
  const [acid, setAcid] = useState<Acid>(acidBefore)
  const fields = useAcidFields(studio)
  const isVinegar = acid === 'acetic'
  const choose = (chosen: string): void => {
    acidBefore = acids.find(({ value }) => value === chosen)?.value ?? 'acetic'
    setAcid(acidBefore)
  }
  const { per100g, perLitre, acids: inBath, alkalinity } = bathOf(acid, fields.value)
  const doubt = per100g === undefined ? undefined : doubtOf('acid', Math.round(per100g))
  const ph = inBath === undefined || alkalinity === undefined ? undefined : startPh(inBath, alkalinity)
  const said = ph === undefined ? undefined : phInWords(ph)
  const asFive = !isVinegar || fields.value('strength') !== 5
  const counts = perLitre === undefined ? '' : amountsInWords({ per100g, perLitre, asFive })
  const water = fields.value('water')
  return (
    <div class="calculator">
      <div class="stack">
        <Choice name="acid" label="Acid" options={acids} value={acid} onChoose={choose} />
        {isVinegar ? (
          <MeasureField key="vinegar" {...fields.of('vinegar')} doubt={doubt} />
        ) : (
          <MeasureField key="citric" {...fields.of('citric')} doubt={doubt} />
        )}
        <div class="fields fields-in-pairs">
          {isVinegar ? <MeasureField key="strength" {...fields.of('strength')} /> : null}
          <MeasureField
            key="water"
            {...fields.of('water')}
            says={water === undefined ? undefined : 'alkalinity as CaCO₃'}
          />
          <MeasureField key="bath" {...fields.of('bath')} />
          <MeasureField key="yarn" {...fields.of('yarn')} />
        </div>
      </div>
      <Answer
        title="Start pH"
        missing={fields.missing(
          ...(isVinegar ? (['vinegar', 'strength'] as const) : (['citric'] as const)),
          'water',
          'bath',
        )}
        holds={[
          ...(per100g === undefined
            ? []
            : [{ key: 'acid', value: `${inFigures(per100g)} mL of 5 % per 100 g` }]),
          ...(water === undefined ? [] : [{ key: 'water', value: `${inFigures(water)} mg/L alkalinity` }]),
        ]}
        copy={said === undefined ? undefined : `Start pH: ${said.figure}\n${said.words} ${counts}`}
      >
        <p class="answer-figure">{said?.figure}</p>
        <p>
          {said?.words} {counts} It climbs by 0.5 to 1.5 once the yarn is in.
        </p>
        {ph === undefined || perLitre === undefined || water === undefined || !isVinegar ? null : (
          <AcidCurve at={{ perLitre, ph: ph.cold }} water={water} label={`pH ${figure(ph.cold, 1)}`} />
        )}
        <div>
          {ph?.notAcid === true ? (
            <Note kind="doubt" title="Heated, the water uses up all the acid there is">
              Add more acid, or take softer water.
            </Note>
          ) : null}
          {isVinegar ? null : (
            <Note title="As much acid is not the same pH">
              By pH 4 citric acid has given up little more than one of its three: a swap by acid alone reads
              otherwise.
            </Note>
          )}
          <Note title="Usual: 15–100 mL per 100 g">
            Worked out, not measured, and without the fibre: a strip at 15 minutes tells more.
          </Note>
          <Note title="Household acid only, never with bleach">Air the room when it is hot.</Note>
        </div>
      </Answer>
    </div>
  )
}
