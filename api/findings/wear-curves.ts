import type { Finding, SkeinFinding } from '#api/contract/finding.ts'
import type { Wear } from '#api/contract/wear.ts'
import { groupBy } from '#api/science/group-by.ts'
import { studentTQuantile } from '#api/science/statistics/student-t.ts'
import type { ResultSeen } from '#db/trial-record.ts'
import type { FactorWithLevels } from '#db/trials.ts'

/**
 * The loss of each level along the axis of the rule’s wear, at every amount that was read: a skein read five times is
 * one line, and a level’s point is the mean of its sessions.
 */
export function wearCurves(
  factor: FactorWithLevels,
  skeins: readonly SkeinFinding[],
  {
    results,
    wear,
    outcome,
    confidence,
  }: { results: readonly ResultSeen[]; wear: Wear; outcome: string; confidence: number },
): Finding['curve'] {
  const [axis, ...others] = Object.keys(wear)
  if (axis === undefined || others.length > 0) return []
  const along = results.filter(
    (it) =>
      it.kind === outcome &&
      Object.keys(it.wear).join() === axis &&
      it.basis !== 'standard' &&
      it.basis !== 'twin',
  )
  const bySkein = groupBy(along, (result) => result.skeinId)
  return factor.levels.flatMap((level) => {
    const mine = skeins.filter((skein) => skein.levelId === level.id && skein.status !== 'lost')
    const points = groupBy(
      mine.flatMap((skein) =>
        (bySkein.get(skein.id) ?? []).map((result) => ({
          session: skein.sessionId,
          amount: result.wear[axis] ?? 0,
          value: result.value,
        })),
      ),
      (point) => point.amount,
    )
    if (points.size === 0) return []
    return [
      {
        levelId: level.id,
        points: [...points]
          .sort(([a], [b]) => a - b)
          .map(([amount, group]) => {
            const means = [...groupBy(group, (it) => it.session).values()].map(
              (session) => session.reduce((sum, it) => sum + it.value, 0) / session.length,
            )
            const n = means.length
            const mean = means.reduce((sum, it) => sum + it, 0) / n
            const sd = Math.sqrt(means.reduce((sum, it) => sum + (it - mean) ** 2, 0) / Math.max(1, n - 1))
            const half = n < 2 ? null : studentTQuantile(confidence, n - 1) * (sd / Math.sqrt(n))
            return {
              amount,
              n,
              mean,
              lower: half === null ? null : mean - half,
              upper: half === null ? null : mean + half,
            }
          }),
      },
    ]
  })
}
