import { exhaustion } from '#api/science/bath/exhaustion.ts'
import { MeasureField } from '#web/form/measure-field.tsx'
import { figure } from '#web/form/number-words.ts'
import { Answer } from '#web/pages/calculators/answer.tsx'
import { useMeasures } from '#web/pages/calculators/use-measures.ts'
import { Note } from '#web/parts/note.tsx'

const starts = ['startAbsorbance', 'startDilution', 'startVolume'] as const
const ends = ['endAbsorbance', 'endDilution', 'endVolume'] as const

/** How much of the dye the yarn has taken, from the bath before and after. */
export function Exhaustion() {
  const number = { keptAs: '', least: 0 } as const
  const bath = { keptAs: 'L', least: 0 } as const
  const fields = useMeasures('exhaustion', {
    startAbsorbance: { ...number, label: 'Absorbance at the start', words: 'the absorbance at the start' },
    startDilution: { ...number, label: 'Diluted at the start, one in', words: 'its dilution', amount: '1' },
    startVolume: { ...bath, label: 'Bath at the start', words: 'the bath at the start' },
    endAbsorbance: { ...number, label: 'Absorbance at the end', words: 'the absorbance at the end' },
    endDilution: { ...number, label: 'Diluted at the end, one in', words: 'its dilution', amount: '1' },
    endVolume: { ...bath, label: 'Bath at the end', words: 'the bath at the end' },
  })
  const sample = ([absorbance, dilution, volume]: typeof starts | typeof ends) => ({
    absorbance: fields.value(absorbance) ?? 0,
    dilution: fields.value(dilution) ?? 0,
    volume: fields.value(volume) ?? 0,
  })
  const [start, end] = [sample(starts), sample(ends)]
  const blank = fields.missing(...starts, ...ends)
  const isDyed = start.absorbance * start.dilution * start.volume > 0
  const missing = blank.length > 0 || isDyed ? blank : ['some dye at the start']
  const taken = missing.length === 0 ? exhaustion(start, end) : 0
  return (
    <div class="calculator">
      <div class="stack">
        {[starts, ends].map((keys) => (
          <div key={keys[0]} class="fields">
            {keys.map((key) => (
              <MeasureField key={key} {...fields.of(key)} />
            ))}
          </div>
        ))}
      </div>
      <Answer title="Taken up" missing={missing} copy={`Taken up: ${figure(taken, 1)} %`}>
        <p class="answer-figure">{figure(taken, 1)} %</p>
        <p>{inWords(taken)}</p>
        <div>
          {start.absorbance > 1 || end.absorbance > 1 ? (
            <Note kind="doubt" title="An absorbance above 1 no longer goes with the dye">
              Dilute that sample, and say how far.
            </Note>
          ) : null}
          <Note title="Same wavelength, same cell, blank subtracted">Cool both samples first.</Note>
        </div>
      </Answer>
    </div>
  )
}

/** Rules of thumb of the trade. */
function inWords(taken: number): string {
  if (taken < 0) return 'There is more dye in the bath than there was: look at the samples.'
  if (taken >= 97) return '3 % or less is left: good.'
  if (taken >= 94) return '6 % or less is left: fair for a deep shade.'
  return taken < 88
    ? 'More than 12 % is left: short of acid, heat or time, or too much dye.'
    : 'Between 6 and 12 % is left: more time, heat or acid may take it.'
}
