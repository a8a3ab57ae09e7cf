import type { Verdict } from '../verdicts/verdict.ts'

/** Where the margin line stands, and the interval’s two ends and middle, in a box of 32 × 20. */
export type VerdictMarkShape = {
  readonly margin: number
  readonly from: number
  readonly middle: number
  readonly to: number
}

const shapes: Readonly<Record<Verdict, VerdictMarkShape>> = {
  holds: { margin: 27, from: 2, middle: 11, to: 20 },
  'does-not-hold': { margin: 4, from: 11, middle: 20, to: 29 },
  'not-settled': { margin: 19, from: 2, middle: 12.5, to: 30 },
}

/**
 * The shape of a verdict: wholly left of the margin line holds, wholly right does not hold, across it is not settled. It
 * shows the answer, not the data.
 *
 * @example
 * verdictMarkShape('holds') // { margin: 27, to: 20 }
 */
export function verdictMarkShape(verdict: Verdict): VerdictMarkShape {
  return shapes[verdict]
}
