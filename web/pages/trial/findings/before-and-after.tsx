import type { Finding, LevelFinding } from '#api/contract/finding.ts'
import { counted, figure } from '#web/form/number-words.ts'
import { fromTheTop } from '#web/pages/trial/findings/finding-words.ts'
import { DeltaE } from '#web/parts/delta-e.tsx'
import { PairTile } from '#web/parts/pair-tile.tsx'
import { Section } from '#web/parts/section.tsx'

/** A pair of tiles for each level, from the reference down; graded by eye it has a grade, and never a made-up colour. */
export function BeforeAndAfter({ finding }: { readonly finding: Finding }) {
  const { levels, outcome, verdict } = finding
  const shown = fromTheTop(levels).filter(
    ({ before, after, worstGrade }) => (before !== null && after !== null) || worstGrade !== null,
  )
  if (shown.length === 0) return null
  return (
    <Section
      title="Before and after"
      says={`Mean of ${counted(most(shown), 'skein')}, before and after ${outcome?.wearInWords ?? 'the test'}, on neutral grey.`}
    >
      <div class="pair-tiles">
        {shown.map((level) => (
          <LevelPair
            key={level.id}
            level={level}
            isLoss={outcome?.key === 'dE00'}
            chosen={level.id === verdict?.levelId}
          />
        ))}
      </div>
    </Section>
  )
}

type LevelPairProps = { readonly level: LevelFinding; readonly isLoss: boolean; readonly chosen: boolean }

function LevelPair({ level, isLoss, chosen }: LevelPairProps) {
  const { before, after, direction, withinNoise, mean, worstGrade } = level
  const loss = isLoss && mean !== null
  return (
    <PairTile
      pair={before && after ? { before, after } : undefined}
      title={level.tick}
      words={direction}
      withinNoise={withinNoise}
      chosen={chosen}
      figures={
        <>
          {loss ? (
            <>
              {figure(mean, 1)} <DeltaE />
            </>
          ) : null}
          {worstGrade === null ? null : `${loss ? ', ' : ''}worst grade ${worstGrade}`}
        </>
      }
    />
  )
}

function most(levels: readonly LevelFinding[]): number {
  return Math.max(...levels.map(({ skeins }) => skeins))
}
