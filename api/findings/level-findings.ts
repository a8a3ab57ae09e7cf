import type { LevelFinding, SkeinFinding } from '#api/contract/finding.ts'
import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import { directionInWords } from '#api/science/colour/direction-in-words.ts'
import type { Lab } from '#api/science/colour/lab.ts'
import { meanLab } from '#api/science/colour/mean-colour.ts'
import { gradeNumber } from '#api/science/fastness/grades.ts'
import { groupBy } from '#api/science/group-by.ts'
import { studentTQuantile } from '#api/science/statistics/student-t.ts'
import type { FactorWords } from '#api/words/levels.ts'
import type { FactorWithLevels } from '#db/trials.ts'

/** What each level came to: counts, mean of its sessions with interval, colour before and after, in words. */
export function levelFindings(
  factor: FactorWithLevels,
  skeins: readonly SkeinFinding[],
  {
    words,
    confidence,
    noiseFloor,
  }: { words: FactorWords; confidence: number; noiseFloor: number | undefined },
): LevelFinding[] {
  return factor.levels.map((level) => {
    const mine = skeins.filter((skein) => skein.levelId === level.id)
    const withResult = mine.filter((skein) => skein.value !== null && skein.status !== 'lost')
    const sessions = groupBy(withResult, (skein) => skein.sessionId)
    const means = [...sessions.values()].map((group) => mean(group.map((skein) => skein.value ?? 0)))
    const pairs = withResult.filter((skein) => skein.before && skein.after)
    const before = meanOf(pairs.map((skein) => skein.before))
    const after = meanOf(pairs.map((skein) => skein.after))
    const changed = before && after ? ciede2000(before, after) : undefined
    const withinNoise = changed !== undefined && noiseFloor !== undefined && changed <= noiseFloor
    const grades = withResult.flatMap((skein) => (skein.grade === null ? [] : [skein.grade]))
    return {
      id: level.id,
      position: level.position,
      label: level.label,
      value: level.value,
      isReference: level.isReference,
      tick: words.tick(level),
      words: words.short(level),
      skeins: withResult.length,
      vessels: new Set(withResult.map((skein) => skein.vesselId)).size,
      sessions: sessions.size,
      lost: mine.filter((skein) => skein.status === 'lost').length,
      missing: mine.filter((skein) => skein.status !== 'lost' && skein.value === null).length,
      ...intervalOf(means, confidence),
      before: before ?? null,
      after: after ?? null,
      direction: before && after && !withinNoise ? directionInWords(before, after) : [],
      withinNoise,
      worstGrade:
        grades.length === 0 ? null : grades.reduce((a, b) => (gradeNumber(a) <= gradeNumber(b) ? a : b)),
    }
  })
}

/** Mean with its two-sided interval, whose ends are the one-sided limits at the rule’s confidence. */
function intervalOf(values: readonly number[], confidence: number) {
  const n = values.length
  if (n === 0) return { mean: null, sd: null, lower: null, upper: null }
  const middle = mean(values)
  if (n === 1) return { mean: middle, sd: null, lower: null, upper: null }
  const sd = Math.sqrt(values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (n - 1))
  const half = studentTQuantile(confidence, n - 1) * (sd / Math.sqrt(n))
  return { mean: middle, sd, lower: middle - half, upper: middle + half }
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}

function meanOf(colours: readonly (Lab | null)[]): Lab | undefined {
  const known = colours.filter((colour): colour is Lab => colour !== null)
  return known.length === 0 ? undefined : meanLab(known)
}
