import type { Finding } from '#api/contract/finding.ts'
import { Choice, Pick } from '#web/form/choice.tsx'
import { figure } from '#web/form/number-words.ts'
import { FindingDo } from '#web/pages/trial/findings/finding-do.tsx'
import type { FindingViewProps } from '#web/pages/trial/findings/finding-view.tsx'
import { SubjectPair } from '#web/pages/trial/findings/subject-pair.tsx'
import { LinkButton } from '#web/parts/button.tsx'
import { Sentence } from '#web/parts/delta-e.tsx'
import { EstimateRuler } from '#web/parts/estimate.tsx'
import { Note } from '#web/parts/note.tsx'
import { VerdictBlock } from '#web/parts/verdict-block.tsx'

/** The answer: where a second factor splits the trial, which part of it; the verdict, or what it waits for. */
export function FindingHead(props: FindingViewProps) {
  const { finding } = props
  const { verdict } = finding
  return (
    <div class="finding-head stack">
      <Within {...props} />
      {verdict === null ? (
        <WaitsFor finding={finding} />
      ) : (
        <VerdictBlock
          verdict={verdict.answer}
          sentence={verdict.headline}
          lead={<Sentence text={verdict.lead} />}
          counts={<Sentence text={verdict.counts} />}
          ruler={verdict.answer === 'not-settled' ? <Ruler estimate={verdict.estimate} /> : undefined}
          pair={<SubjectPair finding={finding} />}
        />
      )}
      {verdict === null ? null : <FindingDo {...props} verdict={verdict} />}
    </div>
  )
}

function Ruler({ estimate }: { readonly estimate: NonNullable<Finding['verdict']>['estimate'] }) {
  if (estimate === null) return null
  const { value, lower, upper, margin } = estimate
  return (
    <EstimateRuler
      value={value}
      low={lower}
      high={upper}
      margin={{ at: margin, label: figure(margin, margin < 0.1 ? 2 : 1) }}
    />
  )
}

/** Few are all in sight, many in a list that opens. */
function Within({ finding: { within }, within: asked, lookWithin }: FindingViewProps) {
  if (within === null) return null
  const choice = {
    name: 'within',
    label: within.factor,
    options: within.levels.map(({ id, label }) => ({ value: id, words: label })),
    value: asked ?? within.levelId,
    onChoose: lookWithin,
  }
  return within.levels.length > 4 ? <Choice {...choice} /> : <Pick {...choice} />
}

function WaitsFor({ finding }: { readonly finding: Finding }) {
  const noRule = finding.rule === null
  return (
    <Note
      title="No verdict yet"
      buttons={
        <LinkButton small href={`/trials/${finding.trialId}/${noRule ? 'plan' : 'readings'}`}>
          {noRule ? 'Write the rule' : 'Go to the readings'}
        </LinkButton>
      }
    >
      <Sentence text={finding.waitsFor ?? ''} />
    </Note>
  )
}
