import { moments } from './moments.ts'

/** The values of one time, pooled: what a curve cannot tell apart. */
export type TimeOfCurve = { readonly time: number; readonly n: number; readonly mean: number }

/** A fit of y = c + b·exp(−k (t − t₀)) for one k: b is the height at the first time t₀ above the plateau c. */
export type FitForRate = {
  readonly b: number
  readonly c: number
  readonly squares: number
  /** What a unit of variance of a point makes of b and c. */
  readonly varianceB: number
  readonly varianceC: number
}

/** The points of a curve, ready to be fitted for one rate after another. */
export type CurvePoints = {
  readonly times: readonly TimeOfCurve[]
  readonly n: number
  readonly first: number
  /** Length from the first time to the second, and to the last. */
  readonly gap: number
  readonly length: number
  /** Squares within times, which no curve can explain. */
  readonly pure: number
  /** Squares below which what is left is rounding. */
  readonly rounding: number
}

/**
 * Points gathered by their times, in rising order.
 *
 * @throws RangeError when there is none, or the lists are of unequal length
 *
 * @example
 * curvePoints([2, 1, 1], [4, 7, 9]) // { n: 3, first: 1, gap: 1, length: 1, pure: 2 }
 */
export function curvePoints(time: readonly number[], value: readonly number[]): CurvePoints {
  if (time.length === 0 || time.length !== value.length)
    throw new RangeError('a curve needs as many values as times')
  const byTime = new Map<number, number[]>()
  for (const [i, t] of time.entries()) {
    const list = byTime.get(t) ?? []
    list.push(value[i] ?? 0)
    byTime.set(t, list)
  }
  const gathered = [...byTime]
    .sort(([one], [other]) => one - other)
    .map(([at, values]) => ({ time: at, ...moments(values, value[0]) }))
  const first = gathered[0]?.time ?? 0
  const size = value.reduce((most, it) => Math.max(most, Math.abs(it)), 0)
  return {
    times: gathered.map(({ time: at, n, fromOrigin }) => ({ time: at, n, mean: fromOrigin })),
    n: time.length,
    first,
    gap: (gathered[1]?.time ?? first) - first,
    length: (gathered.at(-1)?.time ?? first) - first,
    pure: gathered.reduce((sum, { squares }) => sum + squares, 0),
    rounding: time.length * (8 * Number.EPSILON * size) ** 2,
  }
}

/**
 * The best b and c for a rate k, which enter linearly (variable projection: Golub & Pereyra 1973, SIAM J. Numer. Anal.
 * 10, 413–432). The rate 0 stands for a straight line (b is then its fall per unit of time), an endless rate for a step
 * after the first time. `c` is counted from the first value that was given (5 in the example: the plateau is at −1).
 *
 * @example
 * fitForRate(curvePoints([0, 1, 2], [5, 2, 0.5]), Math.LN2) // { b: 6, c: -6, squares: 0 }
 */
export function fitForRate({ times, n, first, pure }: CurvePoints, k: number): FitForRate {
  // exp(−kτ) − 1, or what it tends to when k is 0 or endless: exact for small kτ.
  const bend = (t: number) => {
    const tau = t - first
    if (k === 0) return -tau
    if (k === Number.POSITIVE_INFINITY) return tau > 0 ? -1 : 0
    return Math.expm1(-k * tau)
  }
  const bends = times.map(({ time }) => bend(time))
  let bendSum = 0
  let meanSum = 0
  for (const [i, { n: count, mean }] of times.entries()) {
    bendSum += count * (bends[i] ?? 0)
    meanSum += count * mean
  }
  const [middle, mean] = [bendSum / n, meanSum / n]
  let bendSquares = 0
  let products = 0
  for (const [i, { n: count, mean: here }] of times.entries()) {
    const away = (bends[i] ?? 0) - middle
    bendSquares += count * away * away
    products += count * away * (here - mean)
  }
  const b = products / bendSquares
  let squares = pure
  for (const [i, { n: count, mean: here }] of times.entries())
    squares += count * (here - mean - b * ((bends[i] ?? 0) - middle)) ** 2
  return {
    b,
    c: mean - b * (middle + 1),
    squares,
    varianceB: 1 / bendSquares,
    varianceC: 1 / n + (middle + 1) ** 2 / bendSquares,
  }
}
