import { normalQuantile } from './normal.ts'
import type { Unavailable } from './unavailable.ts'

export type KappaWeights = 'exact' | 'linear' | 'quadratic'

export type Kappa = {
  readonly n: number
  /** 1: always the same; 0: no more alike than by chance. */
  readonly kappa: number
  readonly observed: number
  readonly expected: number
  /** Of large numbers; below about 30 pairs, or where nearly all agree, it says little. */
  readonly se: number
  readonly lower: number
  readonly upper: number
}

/**
 * How far two graders agree beyond chance, near misses counted in part: weights 1 − |a − b| ÷ the widest distance (linear), its
 * square (quadratic), or exact agreement alone. Distances are by the value of the grade.
 *
 * Sources: Cohen (1968), Psychol. Bull. 70, 213–220; standard error by Fleiss, Cohen & Everitt (1969), Psychol. Bull. 72, 323–327.
 *
 * @param pairs  One for each thing: the grade of the first grader and of the second.
 * @param level  Two-sided confidence.
 *
 * @example
 * weightedKappa([[4, 4], [3, 3], [4, 3], [3, 3]], { weights: 'linear' }) // { n: 4, kappa: 0.5, observed: 0.75, expected: 0.5 }
 */
export function weightedKappa(
  pairs: readonly (readonly [number, number])[],
  { weights = 'linear', level = 0.95 }: { readonly weights?: KappaWeights; readonly level?: number } = {},
): Kappa | Unavailable {
  const n = pairs.length
  if (n === 0) return { unavailable: 'Nothing was graded by both.' }
  const grades = [...new Set(pairs.flat())].sort((a, b) => a - b)
  const widest = grades.at(-1)! - grades[0]!
  if (widest === 0) return { unavailable: 'Both gave one and the same grade to everything.' }
  const weightOf = (a: number, b: number) => {
    const apart = Math.abs(a - b) / widest
    if (weights === 'exact') return a === b ? 1 : 0
    return 1 - (weights === 'linear' ? apart : apart ** 2)
  }
  const shareOf = (grader: 0 | 1, grade: number) => pairs.filter((pair) => pair[grader] === grade).length / n
  const shares = grades.map((grade) => ({ grade, first: shareOf(0, grade), second: shareOf(1, grade) }))
  const meanWeight = (grade: number, of: 'first' | 'second') =>
    shares.reduce((sum, it) => sum + it[of] * weightOf(grade, it.grade), 0)
  const observed = pairs.reduce((sum, [a, b]) => sum + weightOf(a, b), 0) / n
  const expected = shares.reduce((sum, it) => sum + it.first * meanWeight(it.grade, 'second'), 0)
  const kappa = (observed - expected) / (1 - expected)
  const spread = pairs.reduce((sum, [a, b]) => {
    const chance = meanWeight(a, 'second') + meanWeight(b, 'first')
    return sum + (weightOf(a, b) - chance * (1 - kappa)) ** 2
  }, 0)
  const variance = (spread / n - (kappa - expected * (1 - kappa)) ** 2) / (n * (1 - expected) ** 2)
  const se = Math.sqrt(Math.max(0, variance))
  const reach = normalQuantile(0.5 + level / 2) * se
  return { n, kappa, observed, expected, se, lower: kappa - reach, upper: kappa + reach }
}
