import '#web/pages/method/method.css'
import { Answers } from '#web/pages/method/answers.tsx'
import { BathAndMeasures } from '#web/pages/method/bath-and-measures.tsx'
import { CalibrationStudy } from '#web/pages/method/calibration-study.tsx'
import { Cautions } from '#web/pages/method/cautions.tsx'
import { ColourAndGrades } from '#web/pages/method/colour-and-grades.tsx'
import { EvidenceAndStatistics } from '#web/pages/method/evidence-and-statistics.tsx'
import { ScalesAndProtocols } from '#web/pages/method/scales-and-protocols.tsx'
import { UnitsAndLoss } from '#web/pages/method/units-and-loss.tsx'
import { PageTitle } from '#web/parts/page-title.tsx'

const chapters = [
  ['units', 'What counts as one'],
  ['loss', 'Loss and extra loss'],
  ['noise', 'Noise, raw and net'],
  ['answers', 'The steps and the three answers'],
  ['looks', 'Looks'],
  ['limits', 'Side limits and the window'],
  ['calibration', 'Is the rule as honest as it says?'],
  ['differences', 'Colour differences'],
  ['change-grade', 'Grade for change in colour'],
  ['staining-grade', 'Grade for staining'],
  ['light', 'Light'],
  ['scales', 'What the steps of each scale mean'],
  ['protocols', 'Washing, contact, rubbing and light'],
  ['recipe', 'Dye, stock and bath'],
  ['ph', 'Start pH'],
  ['measures', 'Measures of the kitchen'],
  ['evidence', 'Evidence, E0 to E4'],
  ['statistics', 'Statistics'],
  ['across', 'Across trials'],
  ['cautions', 'Cautions'],
] as const

/** How it is worked out: every rule and formula in plain words, with its source. */
export function MethodPage() {
  return (
    <div class="stack-wide">
      <div class="stack">
        <PageTitle>How it is worked out</PageTitle>
        <p class="lead">
          Every answer here can be worked out again by hand or with other software. This is how, and from
          which sources.
        </p>
        <nav aria-label="Chapters">
          <ul class="method-contents plain-list">
            {chapters.map(([id, title]) => (
              <li key={id}>
                <a href={`#${id}`}>{title}</a>
              </li>
            ))}
          </ul>
        </nav>
      </div>
      <UnitsAndLoss />
      <Answers />
      <CalibrationStudy />
      <ColourAndGrades />
      <ScalesAndProtocols />
      <BathAndMeasures />
      <EvidenceAndStatistics />
      <Cautions />
    </div>
  )
}
