import { comparisons, judgedBy } from '#api/contract/question.ts'
import type { Verdict } from '#api/science/verdicts/verdict.ts'
import type { LevelRow } from '#db/trials.ts'
import type { Answer } from './answer.ts'
import type { Condition } from './condition.ts'

/**
 * How the levels of a stratum are gone through: stepped down from the most (an ordered factor), each arm against one,
 * each by itself, or one answer of the whole.
 */
export type Shape = 'ladder' | 'arms' | 'each' | 'whole'

/** What all conditions together say of one level. */
export type LevelClaim = {
  /** Null: one answer of the whole stratum. */
  readonly level: LevelRow | null
  readonly isReference: boolean
  /** In the order of the rule’s conditions; what the reference is not asked is missing. */
  readonly answers: readonly Answer[]
  /** Null: the reference, which answers only its own limits. */
  readonly answer: Verdict | null
  /** Below the first step that does not hold: shown, never claimed. */
  readonly afterStop: boolean
  /** A limit of the high end (felting) is not met here: the window is closed from above. */
  readonly closed: boolean
}

export function shapeOf(
  conditions: readonly Condition[],
  { ordered, levels }: { readonly ordered: boolean; readonly levels: number },
): Shape {
  if (conditions.every(({ question }) => question === 'sees')) return 'whole'
  const each = conditions.some(
    ({ byLot, question }) =>
      byLot || question === 'to-standard' || question === 'light' || question === 'open-against-covered',
  )
  if (each) return 'each'
  if (ordered && levels > 1) return 'ladder'
  return conditions.some(({ question }) => comparisons.has(question)) ? 'arms' : 'each'
}

const order: readonly Verdict[] = ['does-not-hold', 'not-settled', 'holds']

/**
 * The worst of several answers.
 *
 * @example
 * [worstOf(['holds', 'not-settled']), worstOf([])] // ['not-settled', 'not-settled']
 */
export function worstOf(answers: readonly Verdict[]): Verdict {
  return order.find((it) => answers.includes(it)) ?? 'not-settled'
}

/** Low-end answers decide; those of the high end close the window. */
export const isHighEnd = ({ condition }: Answer): boolean => condition.end === 'high'

/** Whether a condition is judged by the measured change in colour, which has a measuring error. */
export function hasNoise({ outcome, question }: Condition): boolean {
  return outcome === 'dE00' && question !== 'sees' && judgedBy(outcome) === 'meter'
}
