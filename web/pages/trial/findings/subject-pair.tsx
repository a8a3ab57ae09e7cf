import type { Finding } from '#api/contract/finding.ts'
import { PairTile } from '#web/parts/pair-tile.tsx'

/** The pair of the level that a settled verdict speaks of, large; nothing while it is open or where no colour was read. */
export function SubjectPair({ finding }: { readonly finding: Finding }) {
  const { verdict, levels, outcome } = finding
  if (verdict === null || verdict.answer === 'not-settled') return null
  const level = levels.find(({ id }) => id === (verdict.levelId ?? verdict.subjectId))
  if (!level?.before || !level.after) return null
  return (
    <PairTile
      large
      pair={{ before: level.before, after: level.after }}
      afterWord={outcome === null ? 'after' : `after ${outcome.wearInWords}`}
    />
  )
}
