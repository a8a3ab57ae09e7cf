import { normalBetween, normalDensity, normalUpper } from './normal.ts'
import { tailTable } from './smooth-table.ts'

/** Both sides of the range of `groups` independent normal values whose spread is known, as functions of w. */
export type NormalRange = {
  readonly lower: (w: number) => number
  readonly upper: (w: number) => number
}

const known = new Map<number, NormalRange>()

/**
 * The range of normal values: the largest minus the smallest of `groups`.
 *
 * P(range > w) = k ∫ φ(z) A^(k−1) (1 − (1 − B/A)^(k−1)) dz with A = Φ(z), B = Φ(z − w), and P(range ≤ w) = k ∫ φ(z)
 * (A − B)^(k−1) dz (Hartley 1942, Biometrika 32, 309–310), by the trapezoid rule, which is exact here to the last
 * digit. Upper tails come from a table that is kept.
 *
 * @throws RangeError unless groups is a whole number from 2 to 10,000
 *
 * @example
 * normalRange(2).upper(2) // 0.157299207050285
 */
export function normalRange(groups: number): NormalRange {
  if (!(Number.isInteger(groups) && groups >= 2 && groups <= 10_000))
    throw new RangeError('a range is that of 2 to 10,000 groups')
  const kept = known.get(groups)
  if (kept) return kept
  const made = {
    lower: (w: number) => below(w, groups),
    upper: tailTable((w) => above(w, groups), { from: 0, to: 53 }),
  }
  if (known.size > 64) known.clear()
  known.set(groups, made)
  return made
}

// The largest of many is steeper than the largest of few.
const nodeStep = (groups: number) => (groups <= 64 ? 1 / 8 : 1 / 16)

function above(w: number, groups: number): number {
  const step = nodeStep(groups)
  const to = Math.max(9, w / 2 + 9)
  let sum = 0
  for (let z = -9; z <= to; z += step) {
    const a = normalUpper(-z)
    const b = normalUpper(w - z)
    sum += normalDensity(z) * a ** (groups - 1) * -Math.expm1((groups - 1) * Math.log1p(-Math.min(1, b / a)))
  }
  return Math.min(1, groups * sum * step)
}

function below(w: number, groups: number): number {
  if (w <= 0) return 0
  const step = nodeStep(groups)
  let sum = 0
  for (let z = -9; z <= 9 + Math.min(w, 9); z += step)
    sum += normalDensity(z) * normalBetween(z - w, z) ** (groups - 1)
  return Math.min(1, groups * sum * step)
}
