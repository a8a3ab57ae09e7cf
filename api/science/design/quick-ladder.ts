import { studentTQuantile } from '../statistics/student-t.ts'
import { fewestBlocks } from '../verdicts/least-level-that-holds.ts'
import type { Verdict } from '../verdicts/verdict.ts'

/**
 * The paired ladder of `leastLevelThatHolds` for trials that are only made up, by the thousand: the same answers from
 * the same sums, over plain arrays. A test holds the two against each other.
 *
 * Values stand level by level, session by session; level 0 is the reference, level 1 the one next to it. NaN is lost.
 */
export type QuickLadder = {
  /** Fills `answers` for levels 1, 2 … from the first `sessions` sessions; the rule's noise unless another is given. */
  readonly judge: (values: Float64Array, sessions: number, answers: Verdict[], noiseRms?: number) => void
}

export type QuickRule = {
  readonly levels: number
  readonly plannedSessions: number
  readonly margin: number
  readonly confidence: number
  /** Root mean square of unchanged things; undefined judges raw losses alone. */
  readonly noiseRms?: number | undefined
  readonly cannotSeeMargin?: boolean | undefined
}

/**
 * A judge for many made-up trials of one plan.
 *
 * @param plannedSessions  Sessions that each level has room for in `values`.
 *
 * @example
 * const answers = []
 * quickLadder({ levels: 1, plannedSessions: 3, margin: 1, confidence: 0.95 }).judge(Float64Array.of(1, 0.8, 1.1, 1.2, 0.9, 0.9), 3, answers)
 * answers // ['holds']
 */
export function quickLadder(rule: QuickRule): QuickLadder {
  const { levels, plannedSessions, margin, confidence } = rule
  const critical = Float64Array.from({ length: plannedSessions }, (_, df) =>
    df === 0 ? Number.NaN : studentTQuantile(confidence, df),
  )
  const net = rule.noiseRms === undefined ? undefined : new Float64Array((levels + 1) * plannedSessions)
  const last = { n: 0, mean: 0, se: 0 }
  const differences = new Float64Array(plannedSessions)

  const limits = (values: Float64Array, level: number, sessions: number): void => {
    let n = 0
    let sum = 0
    let largest = 0
    for (let session = 0; session < sessions; session++) {
      const reference = values[session] ?? Number.NaN
      const value = values[level * plannedSessions + session] ?? Number.NaN
      const difference = value - reference
      if (Number.isNaN(difference)) continue
      largest = Math.max(largest, Math.abs(value), Math.abs(reference))
      differences[n++] = difference
      sum += difference
    }
    const mean = sum / n
    let squares = 0
    let equal = true
    const first = differences[0] ?? 0
    for (let i = 0; i < n; i++) {
      const difference = differences[i] ?? 0
      squares += (difference - mean) ** 2
      if (Math.abs(difference - first) > 1e-9 * largest) equal = false
    }
    last.n = n
    last.mean = mean
    last.se = n < 2 || equal ? Number.NaN : Math.sqrt(squares / (n - 1) / n)
  }

  const answerOf = (values: Float64Array, level: number, sessions: number): Verdict => {
    let netUpper = Number.NEGATIVE_INFINITY
    if (net !== undefined) {
      limits(net, level, sessions)
      netUpper = last.mean + last.se * (critical[last.n - 1] ?? Number.NaN)
    }
    limits(values, level, sessions)
    const half = last.se * (critical[last.n - 1] ?? Number.NaN)
    if (last.mean - half > margin) return 'does-not-hold'
    if (last.n < fewestBlocks || rule.cannotSeeMargin) return 'not-settled'
    // Written so that limits that are not there (NaN) never hold.
    return last.mean + half < margin && netUpper < margin ? 'holds' : 'not-settled'
  }

  return {
    judge: (values, sessions, answers, noiseRms = rule.noiseRms) => {
      if (net !== undefined && noiseRms !== undefined)
        for (let i = 0; i < net.length; i++) {
          const value = values[i] ?? Number.NaN
          const square = (value - noiseRms) * (value + noiseRms)
          net[i] = Math.sign(square) * Math.sqrt(Math.abs(square))
        }
      for (let level = 1; level <= levels; level++) answers[level - 1] = answerOf(values, level, sessions)
    },
  }
}
