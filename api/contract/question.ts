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

/** Asked of a level against another. */
export const comparisons: ReadonlySet<Question> = new Set(['no-worse', 'alike', 'better'])

/**
 * The condition that a headline words and a picture shows: the comparison, else what stands first.
 *
 * @example
 * const felting = { outcome: 'felting', wear: {}, against: 'none', end: 'high', question: 'within-limit', atMost: 2 }
 * const loss = { outcome: 'dE00', wear: { W2: 3 }, against: 'reference', end: 'low', question: 'no-worse', margin: 1 }
 * leadingOf([felting, loss]) // { outcome: 'dE00', question: 'no-worse' }
 */
export function leadingOf<It extends Asking & { readonly end: 'low' | 'high' }>(
  conditions: readonly It[],
): It | undefined {
  const low = conditions.filter(({ end }) => end !== 'high')
  return (
    low.find((it) => comparisons.has(questionOf(it))) ??
    low.find((it) => questionOf(it) !== 'within-limit') ??
    low[0] ??
    conditions[0]
  )
}

/**
 * Whether a condition counts lots, each by its own limit: what “worst lot” said in rules of the first version, and says.
 *
 * @example
 * [countsLots({ statistic: 'worst lot' }), countsLots({ statistic: 'every unit' })] // [true, false]
 */
export const countsLots = ({ statistic }: Pick<Asking, 'statistic'>): boolean => statistic === 'worst lot'

/** Graded, counted in steps, or answered by yes or no: in order and no more, so that no mean is taken. */
export const isOrdinal = (outcome: string): boolean =>
  ['grade', 'steps', 'yes-no'].includes(outcomeKind(outcome).scale)

/**
 * The least gain worth having: as it was locked, else half a grade, 2.0 of staining by ΔE*ab, the margin, or any gain.
 *
 * @example
 * [leastGainOf({ outcome: 'staining' }), leastGainOf({ outcome: 'staining dE76' }), leastGainOf({ outcome: 'spread', margin: 5 }), leastGainOf({ outcome: 'spread' })] // [0.5, 2, 5, 0]
 */
export function leastGainOf({
  outcome,
  leastGain,
  margin,
}: {
  readonly outcome: string
  readonly leastGain?: number | undefined
  readonly margin?: number | undefined
}): number {
  if (leastGain !== undefined) return leastGain
  if (outcome === 'staining dE76') return 2
  if (isOrdinal(outcome)) return 0.5
  return margin ?? 0
}
