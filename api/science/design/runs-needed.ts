import { noncentralT } from '../statistics/noncentral-t.ts'
import { studentTQuantile } from '../statistics/student-t.ts'

/** Beyond this many sessions nobody goes on; the answer is then "unavailable", not a number. */
export const mostRuns = 50

/** What the sessions shall show: that a level is no worse than the margin, or that there is a difference at all. */
export type RunsGoal = 'no-worse' | 'difference'

/**
 * The chance that so many sessions show what is true, by non-central t on paired differences.
 *
 * @param distance  From the true extra loss to the margin (`no-worse`), or the true difference; more than 0.
 * @param sd        Of the differences between sessions; more than 0.
 * @param level     One-sided for `no-worse` (0.95), two-sided for `difference` (0.95).
 * @param arms      1 for differences within sessions; 2 where two sets of independent units of equal number are compared,
 *                  `sd` then being that of a single unit.
 *
 * @example
 * powerOfRuns(6, { distance: 1, sd: 0.6, goal: 'no-worse' }) // 0.96564
 */
export function powerOfRuns(
  runs: number,
  { distance, sd, goal, level = 0.95, arms = 1 }: RunsQuestion,
): number {
  const df = arms * (runs - 1)
  if (df < 1) return 0
  // A shift of 10⁸ standard errors is certain enough; more of it cannot be reckoned with.
  const shift = Math.min(1e8, distance / (sd * Math.sqrt(arms / runs)))
  if (goal === 'no-worse') return noncentralT(studentTQuantile(level, df), df, shift).upper
  const critical = studentTQuantile(1 - (1 - level) / 2, df)
  return noncentralT(critical, df, shift).upper + noncentralT(-critical, df, shift).lower
}

/**
 * How many sessions in all give the wanted chance, never fewer than `least`.
 *
 * @returns undefined when more than 50 would be needed.
 * @throws RangeError when distance or sd is not above 0: no number of sessions shows a difference of nothing.
 *
 * @example
 * runsNeeded({ distance: 1.5, sd: 1, goal: 'no-worse' }) // 5
 */
export function runsNeeded(question: RunsQuestion): number | undefined {
  const { distance, sd, power = 0.8, least = 3 } = question
  if (!(distance > 0) || !(sd > 0)) throw new RangeError('Runs needed takes a distance and an SD above 0.')
  // The chance grows with every run, so halving finds the first number that is enough.
  if (powerOfRuns(mostRuns, question) < power) return undefined
  let [below, enough] = [Math.max(2, least) - 1, mostRuns]
  while (enough - below > 1) {
    const middle = (below + enough) >> 1
    if (powerOfRuns(middle, question) >= power) enough = middle
    else below = middle
  }
  return enough
}

export type RunsQuestion = {
  readonly distance: number
  readonly sd: number
  readonly goal: RunsGoal
  readonly level?: number
  readonly power?: number
  readonly arms?: 1 | 2
  readonly least?: number
}
