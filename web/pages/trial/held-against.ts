import { patternPlan } from '#api/contract/patterns.ts'

/**
 * Whether a kind of trial holds its levels against a reference. A claim, a light card and a batch judge each level for
 * itself; there the word “reference” would mean nothing.
 *
 * @example
 * [hasReference('P1'), hasReference('P3')] // [true, false]
 */
export function hasReference(pattern: string): boolean {
  return patternPlan(pattern).rule.conditions.some(
    ({ against }) => against === 'reference' || against === 'next level',
  )
}

/**
 * Whether its answer is a loss, so that a twin which is never worn shows the noise.
 *
 * @example
 * [wantsTwins('P1'), wantsTwins('P2')] // [true, false]
 */
export function wantsTwins(pattern: string): boolean {
  return patternPlan(pattern).rule.conditions.some(
    ({ outcome, statistic }) => outcome === 'dE00' && statistic === 'upper limit',
  )
}
