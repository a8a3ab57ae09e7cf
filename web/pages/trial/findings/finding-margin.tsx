import { useState } from 'preact/hooks'
import type { DeclaredVerdict } from '#api/contract/declared-verdict.ts'
import type { Finding } from '#api/contract/finding.ts'
import { cautionsShown, keptOf, moreCautions } from '#web/pages/trial/findings/finding-words.ts'
import { SubjectPair } from '#web/pages/trial/findings/subject-pair.tsx'
import { Button } from '#web/parts/button.tsx'
import { Sentence } from '#web/parts/delta-e.tsx'
import { Note } from '#web/parts/note.tsx'

export type FindingMarginProps = {
  readonly finding: Finding
  readonly recorded: readonly DeclaredVerdict[]
  /** The part of several that is asked for, judged by stricter limits when it is recorded. */
  readonly within: string | undefined
}

/** So many cautions a phone shows at once. */
const shownAtOnce = 2

/** The margin: the pair of the level in question, and the cautions of the tool; a phone folds all but the first two. */
export function FindingMargin({ finding, recorded, within }: FindingMarginProps) {
  const [unfolded, setUnfolded] = useState(false)
  const cautions = cautionsShown(finding)
  const more = cautions.length - shownAtOnce
  const folds = more > 0
  return (
    <aside class="finding-margin" aria-label="Cautions">
      <div class="desk-only finding-pair">
        <SubjectPair finding={finding} />
      </div>
      <RecordedOtherwise finding={finding} recorded={recorded} within={within} />
      {cautions.map(({ kind, title, text }, place) => (
        <div key={title} class={folds && !unfolded && place >= shownAtOnce ? 'finding-folded' : undefined}>
          <Note kind={kind} title={<Sentence text={title} />}>
            {text.map((sentence) => (
              <p key={sentence}>
                <Sentence text={sentence} />
              </p>
            ))}
          </Note>
        </div>
      ))}
      {folds ? (
        <div class="phone-only">
          <Button kind="plain" expanded={unfolded} onPress={() => setUnfolded(!unfolded)}>
            {unfolded ? 'Fewer cautions' : moreCautions(more)}
          </Button>
        </div>
      ) : null}
    </aside>
  )
}

/** What was recorded stays as it was; when a reading was corrected since, both are said. */
function RecordedOtherwise({ finding, recorded, within }: FindingMarginProps) {
  const { verdict } = finding
  const kept = keptOf(recorded, finding, within)
  if (!verdict || !kept || within !== undefined) return null
  if (kept.headline === verdict.headline && kept.lead === verdict.lead) return null
  return (
    <Note kind="doubt" title="Recorded otherwise">
      What was recorded stays: “{kept.headline}” <Sentence text={kept.lead} /> Since then results have
      changed.
    </Note>
  )
}
