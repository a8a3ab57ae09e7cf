import { type Percent, percent } from '#api/science/units.ts'

/**
 * How far off a weight (or a volume) may be, for being read to the nearest step: ± this many per cent.
 *
 * Half a step of the scale, as a share of what is weighed. It says nothing of a scale that is out of true.
 *
 * @param amount  More than 0, in the unit of `step`.
 * @param step    Smallest step of the scale, or between two marks.
 *
 * @throws RangeError when there is nothing to weigh.
 *
 * @example
 * weighingError(0.3, 0.1) // 17
 */
export function weighingError(amount: number, step: number): Percent {
  if (!(amount > 0)) throw new RangeError('a weighing error needs something that is weighed')
  return percent((50 * step) / amount)
}
