import { outcomeKind } from '#api/contract/outcomes.ts'
import type { RuleCondition } from '#db/tables.ts'

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

/** A condition of a rule as it is judged: with its question, and its numbers as they were locked. */
export type Condition = Omit<RuleCondition, 'statistic' | 'question'> & {
  readonly question: Question
  /** Of a claim by lot: each lot by its own limit. */
  readonly byLot: boolean
  /** Against the kept standard: the mean of a batch, or every skein of it. */
  readonly each?: 'mean' | 'every'
}

/** How an outcome was had: by a meter, graded by eye, counted or measured, or a plain yes or no. */
export type JudgedBy = 'meter' | 'eye' | 'measured' | 'yes-no'

/**
 * A stored condition as it is judged. Rules of the first version named a statistic in place of a question; they are
 * read as the question that they meant.
 *
 * @example
 * conditionOf({ outcome: 'dE00', wear: { W2: 3 }, end: 'low', against: 'reference', statistic: 'upper limit', margin: 1, direction: 'smaller is better' }).question // 'no-worse'
 */
export function conditionOf(stored: RuleCondition): Condition {
  const { statistic, question, ...rest } = stored
  const asked = question ?? questionOf(stored)
  return {
    ...rest,
    question: asked,
    byLot: statistic === 'worst lot',
    ...(asked === 'to-standard' ? { each: statistic === 'every unit' ? 'every' : 'mean' } : {}),
  }
}

function questionOf({ statistic, against, outcome, wear, atMost, atLeast, margin }: RuleCondition): Question {
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
