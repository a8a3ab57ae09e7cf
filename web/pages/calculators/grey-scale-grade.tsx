import { cielabDifference } from '#api/science/colour/cielab-difference.ts'
import { changeGrade } from '#api/science/fastness/change-grade.ts'
import { stainingGrade } from '#api/science/fastness/staining-grade.ts'
import { figure } from '#web/form/number-words.ts'
import { Answer } from '#web/pages/calculators/answer.tsx'
import { LabFields } from '#web/pages/calculators/lab-fields.tsx'
import { labTyped, useLab } from '#web/pages/calculators/lab-typed.ts'
import { Note } from '#web/parts/note.tsx'
import { PairTile } from '#web/parts/pair-tile.tsx'

const scales = {
  change: {
    title: 'Grade for change in colour',
    first: { legend: 'Before', words: 'the colour before', under: 'before' },
    second: { legend: 'After', words: 'the colour after', under: 'after' },
    gradeOf: changeGrade,
    formula: 'A05',
    bands: 'A difference of 0.41 rates 4.76 and is a 4-5.',
  },
  staining: {
    title: 'Grade for staining',
    first: { legend: 'Cloth, unstained', words: 'the unstained cloth', under: 'unstained' },
    second: { legend: 'Cloth, stained', words: 'the stained cloth', under: 'stained' },
    gradeOf: stainingGrade,
    formula: 'A04',
    bands:
      'A rating of 4.75 or better is a 5, from 4.25 a 4-5, and so on. Wool and nylon lead: cotton hardly takes acid dye.',
  },
} as const

/** The grey-scale grade of a change in colour, or of staining. */
export function GreyScaleGrade({ kind }: { readonly kind: keyof typeof scales }) {
  const { title, first, second, gradeOf, formula, bands } = scales[kind]
  const [beforeTyped, typeBefore] = useLab(`${kind}.before`)
  const [afterTyped, typeAfter] = useLab(`${kind}.after`)
  const [before, after] = [labTyped(beforeTyped), labTyped(afterTyped)]
  const missing = [
    ...(before === undefined ? [first.words] : []),
    ...(after === undefined ? [second.words] : []),
  ]
  const grading = before && after ? gradeOf(before, after) : undefined
  const rated = `Grey-scale rating calculated from CIELAB (${formula} formula)`
  return (
    <div class="calculator">
      <div class="stack">
        <LabFields legend={first.legend} typed={beforeTyped} onType={typeBefore} />
        <LabFields legend={second.legend} typed={afterTyped} onType={typeAfter} />
      </div>
      <Answer
        title={title}
        missing={missing}
        copy={grading && `${grading.grade}\n${rated}: ${figure(grading.rating)}`}
      >
        {grading && before && after ? (
          <>
            <p class="answer-figure">{grading.grade}</p>
            <p>
              {rated}: {figure(grading.rating)}. Its difference is {figure(grading.difference)}, the plain
              CIELAB difference {figure(cielabDifference(before, after).dE76)}.
            </p>
            <PairTile pair={{ before, after }} beforeWord={first.under} afterWord={second.under} />
          </>
        ) : null}
        <Note title="The grade goes by bands, not by rounding">
          {bands} A grade is a place in an order: never take a mean of grades.
        </Note>
      </Answer>
    </div>
  )
}
