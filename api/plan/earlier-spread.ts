import { groupBy } from '#api/science/group-by.ts'
import type { EarlierLoss } from '#db/earlier-differences.ts'

/**
 * The middle of the spreads that earlier trials showed: of each level the SD, over sessions, of its difference from the
 * reference. Undefined when no level was in three sessions together with its reference.
 *
 * @example
 * const loss = (levelId, sessionId, value) => ({ trialId: 't', levelId, sessionId, isReference: levelId === '75', value })
 * earlierSpread([loss('35', 'a', 1), loss('75', 'a', 1), loss('35', 'b', 2), loss('75', 'b', 1), loss('35', 'c', 1.5), loss('75', 'c', 1)]).sd // 0.5
 */
export function earlierSpread(
  losses: readonly EarlierLoss[],
): { readonly sd: number; readonly trials: number } | undefined {
  const spreads: number[] = []
  const trials = new Set<string>()
  for (const [trialId, mine] of groupBy(losses, (it) => it.trialId)) {
    const reference = new Map(mine.filter((it) => it.isReference).map((it) => [it.sessionId, it.value]))
    const others = mine.filter((it) => !it.isReference)
    for (const rows of groupBy(others, (it) => it.levelId).values()) {
      const differences = rows.flatMap((it) => {
        const against = reference.get(it.sessionId)
        return against === undefined || it.sessionId === null ? [] : [it.value - against]
      })
      const sd = differences.length < 3 ? 0 : sdOf(differences)
      if (sd === 0) continue
      spreads.push(sd)
      trials.add(trialId)
    }
  }
  const sd = middleOf(spreads)
  return sd === undefined ? undefined : { sd, trials: trials.size }
}

function sdOf(values: readonly number[]): number {
  const mean = values.reduce((sum, it) => sum + it, 0) / values.length
  return Math.sqrt(values.reduce((sum, it) => sum + (it - mean) ** 2, 0) / (values.length - 1))
}

function middleOf(values: readonly number[]): number | undefined {
  const sorted = values.toSorted((a, b) => a - b)
  const half = sorted.length >> 1
  const upper = sorted[half]
  if (upper === undefined) return undefined
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[half - 1] ?? upper)) / 2
}
