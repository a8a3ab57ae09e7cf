import type { Finding } from '#api/contract/finding.ts'
import { VerdictMark } from '#web/parts/verdict-mark.tsx'

/** Of one part: what the same rule says of each other. */
export function AlsoTried({ within }: { readonly within: NonNullable<Finding['within']> }) {
  if (within.others.length === 0) return null
  return (
    <div class="also-tried">
      <p class="soft">Also tried:</p>
      <ul class="plain-list">
        {within.others.map(({ levelId, answer, headline }) => (
          <li key={levelId}>
            {answer === null ? null : <VerdictMark verdict={answer} scale={0.94} />}
            <span>{headline}</span>
          </li>
        ))}
      </ul>
    </div>
  )
}
