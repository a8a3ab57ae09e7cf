import { outcomeKind } from './outcomes.ts'
import type { PatternCondition } from './patterns.ts'

/** What a condition of a rule asks. Each has its own file in this folder. */
export const questions = [
  'no-worse',
  'alike',
  'better',
  'within-limit',
  'to-standard',
  'light',
  'open-against-covered',
  'sees',
] as const
export type Question = (typeof questions)[number]

/** How an outcome was had: by a meter, graded by eye, counted or measured, or a plain yes or no. */
export type JudgedBy = 'meter' | 'eye' | 'measured' | 'yes-no'

/** What decides the question of a condition, as a rule stores it. */
export type Asking = {
  readonly outcome: string
  readonly wear: Readonly<Record<string, number>>
  readonly against: PatternCondition['against']
  readonly question?: Question | undefined
  readonly statistic?: PatternCondition['statistic'] | undefined
  readonly margin?: number | undefined
  readonly atLeast?: number | undefined
  readonly atMost?: number | undefined
}

/**
 * What a condition is held against: where it does not say, what its question implies.
 *
 * @example
 * againstOf('no-worse', 'none') // 'reference'
 */
export function againstOf(
  question: Question,
  against: PatternCondition['against'],
): PatternCondition['against'] {
  if (against !== 'none') return against
  if (question === 'to-standard') return 'standard'
  return question === 'no-worse' || question === 'alike' || question === 'better' ? 'reference' : 'none'
}

/**
 * The question of a condition. Rules of the first version named a statistic in its place; they are read as the question
 * that they meant.
 *
 * @example
 * questionOf({ outcome: 'dE00', wear: { W2: 3 }, against: 'reference', statistic: 'upper limit', margin: 1 }) // 'no-worse'
 */
export function questionOf(condition: Asking): Question {
  const { statistic, against, outcome, wear, atMost, atLeast, margin, question } = condition
  if (question !== undefined) return question
  if (against === 'standard') return 'to-standard'
  if (statistic === 'bracket') return 'light'
  if (statistic === 'upper limit') return 'no-worse'
  if (statistic === 'every unit' || statistic === 'worst lot') return 'within-limit'
  // The mean of the next level is described beside a limit, never tested.
  if (against === 'next level') return 'within-limit'
  if (against === 'reference' || against === 'control') return 'better'
  const read = outcome === 'dE00' && Object.keys(wear).length === 0
  if (read && (atMost !== undefined || margin !== undefined)) return 'sees'
  return atMost !== undefined || atLeast !== undefined ? 'within-limit' : 'better'
}

/**
 * How an outcome is had.
 *
 * @example
 * [judgedBy('dE00'), judgedBy('staining'), judgedBy('rinses to 4'), judgedBy('bled')] // ['meter', 'eye', 'measured', 'yes-no']
 */
export function judgedBy(outcome: string): JudgedBy {
  const { scale, unit } = outcomeKind(outcome)
  if (scale === 'yes-no') return 'yes-no'
  if (scale === 'grade') return 'eye'
  return unit?.startsWith('ΔE') || outcome === 'lightness' ? 'meter' : 'measured'
}
