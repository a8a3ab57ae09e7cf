import { useState } from 'preact/hooks'
import { Pick } from '#web/form/choice.tsx'
import { GreyScaleGrade } from '#web/pages/calculators/grey-scale-grade.tsx'
import { LightGrade } from '#web/pages/calculators/light-grade.tsx'

const kinds = [
  { value: 'change', words: 'Change in colour', help: 'a skein before and after' },
  { value: 'staining', words: 'Staining', help: 'white cloth, unstained and stained' },
  { value: 'light', words: 'Light', help: 'by blue wools on the same card' },
] as const
type Kind = (typeof kinds)[number]['value']

let kindBefore: Kind = 'change'

/** Grades from colour readings: change, staining, and light by blue wools. */
export function GradeCalculator() {
  const [kind, setKind] = useState<Kind>(kindBefore)
  const choose = (value: string): void => {
    kindBefore = kinds.find((it) => it.value === value)?.value ?? 'change'
    setKind(kindBefore)
  }
  return (
    <div class="stack">
      <Pick name="kind" label="Grade of" options={kinds} value={kind} onChoose={choose} />
      {kind === 'light' ? <LightGrade /> : <GreyScaleGrade key={kind} kind={kind} />}
    </div>
  )
}
