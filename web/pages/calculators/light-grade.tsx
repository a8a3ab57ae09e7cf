import { lightRating } from '#api/science/fastness/light-rating.ts'
import { MeasureField } from '#web/form/measure-field.tsx'
import { listed } from '#web/form/number-words.ts'
import { Answer } from '#web/pages/calculators/answer.tsx'
import { firstFade, lightInWords } from '#web/pages/calculators/light-words.ts'
import { type Asked, useMeasures } from '#web/pages/calculators/use-measures.ts'
import { Note } from '#web/parts/note.tsx'

const numbers = [1, 2, 3, 4, 5, 6, 7, 8] as const
type Wool = `wool${(typeof numbers)[number]}`

const change = { keptAs: '', unitWords: 'ΔE', least: 0 } as const
const wool = (number: number): Asked => ({ ...change, label: `Wool ${number}`, words: `wool ${number}` })
const asked: Readonly<Record<Wool | 'specimen', Asked>> = {
  specimen: { ...change, label: 'The colour has changed by', words: 'the change of the colour' },
  wool1: wool(1),
  wool2: wool(2),
  wool3: wool(3),
  wool4: wool(4),
  wool5: wool(5),
  wool6: wool(6),
  wool7: wool(7),
  wool8: wool(8),
}

/** Where the change of a colour falls between the blue wools that stood beside it. */
export function LightGrade() {
  const fields = useMeasures('light', asked)
  const specimen = fields.value('specimen')
  const read = numbers.flatMap((number) => {
    const dE = fields.value(`wool${number}`)
    return dE === undefined ? [] : [{ number, dE }]
  })
  const missing = [...fields.missing('specimen'), ...(read.length < 2 ? ['two wools or more'] : [])]
  const found = specimen === undefined || read.length < 2 ? undefined : lightRating(specimen, read)
  const said = found && lightInWords(found)
  return (
    <div class="calculator">
      <div class="stack">
        <MeasureField {...fields.of('specimen')} />
        <fieldset class="stack">
          <legend class="choice-name">Blue wools on the same card, the same day</legend>
          <div class="fields fields-in-pairs">
            {numbers.map((number) => (
              <MeasureField key={number} {...fields.of(`wool${number}`)} />
            ))}
          </div>
        </fieldset>
      </div>
      <Answer title="Light fastness" missing={missing} copy={said && `${said.figure}\n${said.words}`}>
        <p class="answer-figure">{said?.figure}</p>
        <p>{said?.words}</p>
        <div>
          {specimen !== undefined && specimen < firstFade ? (
            <Note kind="doubt" title={`Too early to judge: it has changed by less than ${firstFade}`}>
              Put the card back, and read it again later.
            </Note>
          ) : null}
          {found === undefined || found.left.length === 0 ? null : (
            <Note title={`Left out: wool ${listed(found.left.map(({ number }) => String(number)))}`}>
              A wool that has stopped changing, or has not changed yet, bounds nothing.
            </Note>
          )}
          <Note title="A number on a scale, never days">
            It says how the colour lasts beside the wools. Windows, seasons and countries differ.
          </Note>
        </div>
      </Answer>
    </div>
  )
}
