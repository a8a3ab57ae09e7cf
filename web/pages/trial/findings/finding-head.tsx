import type { Finding } from '#api/contract/finding.ts'
import { figure } from '#web/form/number-words.ts'
import { AlsoTried } from '#web/pages/trial/findings/also-tried.tsx'
import { FindingDo } from '#web/pages/trial/findings/finding-do.tsx'
import type { FindingViewProps } from '#web/pages/trial/findings/finding-view.tsx'
import { PartsTogether } from '#web/pages/trial/findings/parts-together.tsx'
import { SubjectPair } from '#web/pages/trial/findings/subject-pair.tsx'
import { LevelChoice } from '#web/pages/trial/level-choice.tsx'
import { LinkButton } from '#web/parts/button.tsx'
import { Sentence } from '#web/parts/delta-e.tsx'
import { EstimateRuler } from '#web/parts/estimate.tsx'
import { Note } from '#web/parts/note.tsx'
import { VerdictBlock } from '#web/parts/verdict-block.tsx'
import { suffixOfHeadline } from '#web/parts/verdict-sentence.tsx'

/** The answer: of all parts together or of the one that was chosen; the verdict, or what it waits for. */
export function FindingHead(props: FindingViewProps) {
  const { finding } = props
  const { verdict, within } = finding
  const together = within !== null && within.parts.length > 1 ? within.parts : undefined
  return (
    <div class="finding-head stack">
      {within === null ? null : (
        <LevelChoice
          factor={within.factor}
          levels={within.levels}
          chosen={props.within}
          onChoose={props.lookWithin}
        />
      )}
      {verdict === null ? (
        <WaitsFor finding={finding} />
      ) : (
        <VerdictBlock
          verdict={verdict.answer}
          sentence={verdict.headline}
          {...(together
            ? { parts: <PartsTogether parts={together} suffix={suffixOfHeadline(verdict.headline)} /> }
            : { lead: <Sentence text={verdict.lead} />, counts: <Sentence text={verdict.counts} /> })}
          ruler={verdict.answer === 'not-settled' ? <Ruler estimate={verdict.estimate} /> : undefined}
          pair={<SubjectPair finding={finding} />}
        />
      )}
      {within === null || together ? null : <AlsoTried within={within} />}
      {within !== null && together && verdict !== null ? (
        <p class="soft">The pictures and tables below are of {within.label}. For another, choose it above.</p>
      ) : null}
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
