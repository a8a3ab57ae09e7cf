import { againstOf, countsLots, type Question, questionOf } from '#api/contract/question.ts'
import type { RuleCondition } from '#db/tables.ts'

/** A condition of a rule as it is judged: with its question, and its numbers as they were locked. */
export type Condition = Omit<RuleCondition, 'statistic' | 'question'> & {
  readonly question: Question
  /** Of a claim by lot: each lot by its own limit. */
  readonly byLot: boolean
  /** Against the kept standard: the mean of a batch, or every skein of it. */
  readonly each?: 'mean' | 'every'
}

/**
 * A stored condition as it is judged. Rules of the first version named a statistic in place of a question; they are
 * read as the question that they meant.
 *
 * @example
 * conditionOf({ outcome: 'dE00', wear: { W2: 3 }, end: 'low', against: 'reference', statistic: 'upper limit', margin: 1, direction: 'smaller is better' }).question // 'no-worse'
 */
export function conditionOf(stored: RuleCondition): Condition {
  const { statistic, question: _, ...rest } = stored
  const question = questionOf(stored)
  return {
    ...rest,
    against: againstOf(question, stored.against),
    question,
    byLot: countsLots(stored),
    ...(question === 'to-standard' ? { each: statistic === 'every unit' ? 'every' : 'mean' } : {}),
  }
}
