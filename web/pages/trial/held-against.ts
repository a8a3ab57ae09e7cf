import { patternPlan } from '#api/contract/patterns.ts'
import { comparisons, questionOf } from '#api/contract/question.ts'

/**
 * Whether a kind of trial holds its levels against a reference. A claim, a light card and a batch judge each level for
 * itself; there the word “reference” would mean nothing.
 *
 * @example
 * [hasReference('P1'), hasReference('P3')] // [true, false]
 */
export function hasReference(pattern: string): boolean {
  return patternPlan(pattern).rule.conditions.some(
    (condition) => comparisons.has(questionOf(condition)) || condition.against === 'next level',
  )
}

/**
 * Whether its answer is a loss, so that a twin which is never washed shows the measuring error.
 *
 * @example
 * [wantsTwins('P1'), wantsTwins('P2')] // [true, false]
 */
export function wantsTwins(pattern: string): boolean {
  return patternPlan(pattern).rule.conditions.some(
    (condition) => condition.outcome === 'dE00' && comparisons.has(questionOf(condition)),
  )
}
