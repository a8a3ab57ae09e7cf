import type { Finding } from '#api/contract/finding.ts'
import { Sentence } from '#web/parts/delta-e.tsx'
import { VerdictMark } from '#web/parts/verdict-mark.tsx'

export type PartsTogetherProps = {
  readonly parts: NonNullable<Finding['within']>['parts']
  /** What stands in the headline of them all: “(dates not recorded)”. */
  readonly suffix: string
}

/** What each part of several says, one below the other: on superwash wool this much, on silk that much. */
export function PartsTogether({ parts, suffix }: PartsTogetherProps) {
  return (
    <ul class="plain-list finding-parts">
      {parts.map(({ levelId, answer, headline, lead }) => (
        <li key={levelId}>
          <VerdictMark verdict={answer} scale={1.2} />
          <div>
            <p class="finding-part-sentence">{headline}</p>
            {lead === '' ? null : (
              <p class="soft">
                <Sentence text={lead} />
              </p>
            )}
          </div>
        </li>
      ))}
      {suffix === '' ? null : <li class="soft">{suffix}</li>}
    </ul>
  )
}
