import { fQuantile } from './f-distribution.ts'

/**
 * Up to what share of all units may fail, when `failing` of `units` did: the exact one-sided upper limit of a share
 * (Clopper & Pearson 1934, Biometrika 26, 404–413), by the F distribution. Without a failure it is 1 − (1 − confidence)^(1/n).
 *
 * @param confidence  One-sided, between 0 and 1.
 * @returns 0–1
 *
 * @throws RangeError unless failing is a whole number from 0 to units, and units 1 or more
 *
 * @example
 * [failingShareUpTo(0, 3), failingShareUpTo(1, 6)] // [0.6316, 0.5818]
 */
export function failingShareUpTo(failing: number, units: number, confidence = 0.95): number {
  if (!(Number.isInteger(units) && units >= 1)) throw new RangeError('Units are counted from 1.')
  if (!(Number.isInteger(failing) && failing >= 0 && failing <= units))
    throw new RangeError('Of the units none, some or all failed.')
  if (!(confidence > 0 && confidence < 1)) throw new RangeError('A confidence lies strictly between 0 and 1.')
  if (failing === units) return 1
  if (failing === 0) return 1 - (1 - confidence) ** (1 / units)
  const [over, under] = [2 * (failing + 1), 2 * (units - failing)]
  const odds = (over / under) * fQuantile(confidence, over, under)
  return odds / (1 + odds)
}
