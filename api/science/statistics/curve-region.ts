import { type CurvePoints, type FitForRate, fitForRate } from './exponential-fits.ts'
import { root } from './root.ts'
import { largestOn } from './search-line.ts'

/** Limits of a quantity; null where it has none. */
export type ProfileLimits = { readonly lower: number | null; readonly upper: number | null }

export type CurveLimits = {
  readonly c: ProfileLimits
  readonly a: ProfileLimits
  readonly k: ProfileLimits
  readonly timeToMargin: ProfileLimits
}

/** Where the logarithm of k is looked for: from nearly a line to a step to the last digit. */
export type RateRange = { readonly from: number; readonly to: number }

/**
 * Limits by profile likelihood: the smallest and largest c, a, k and time to the margin of all curves whose sum of squares
 * stays within `threshold` (Bates & Watts 1988, Nonlinear Regression Analysis, chapter 6). For one k these curves
 * are an ellipse in b and c, so the extremes are found along k alone.
 *
 * When a straight line is among them, k has no lower limit, and the plateau and the time none on one side; when a step is,
 * the first time is already on the plateau, so that k has no upper limit and the time no lower one.
 *
 * @example
 * const times = [[0, 9.1], [1, 5.1], [2, 3.1], [4, 1.6]].map(([time, mean]) => ({ time, mean, n: 2 }))
 * const points = { times, n: 8, first: 0, gap: 1, length: 4, pure: 0.08, rounding: 0 }
 * curveLimits(points, { threshold: 0.2, best: Math.log(0.7), range: { from: -9, to: 3.7 } }).k // { lower: 0.603956, upper: 0.789739 }
 */
export function curveLimits(
  points: CurvePoints,
  {
    threshold,
    best,
    range,
    margin,
  }: {
    readonly threshold: number
    readonly best: number
    readonly range: RateRange
    readonly margin?: number | undefined
  },
): CurveLimits {
  const excess = (logK: number) => fitForRate(points, Math.exp(logK)).squares - threshold
  const line = fitForRate(points, 0)
  const step = fitForRate(points, Number.POSITIVE_INFINITY)
  const lineFits = line.squares <= threshold
  const stepFits = step.squares <= threshold
  const from = lineFits ? range.from : crossing(excess, range.from, best)
  const to = stepFits ? range.to : crossing(excess, range.to, best)

  const reach = (variance: number, squares: number) => Math.sqrt(Math.max(0, threshold - squares) * variance)
  const extreme = (of: (fit: FitForRate, k: number, side: 1 | -1) => number, side: 1 | -1) => {
    const along = (logK: number) => {
      const k = Math.exp(logK)
      return side * of(fitForRate(points, k), k, side)
    }
    return side * largestOn(along, { from, to, places: 150 }).value
  }
  const c = (fit: FitForRate, _: number, side: 1 | -1) => fit.c + side * reach(fit.varianceC, fit.squares)
  const a = (fit: FitForRate, k: number, side: 1 | -1) =>
    (fit.b + side * reach(fit.varianceB, fit.squares)) * Math.exp(k * points.first)
  const time = (fit: FitForRate, k: number, side: 1 | -1) => {
    const height = Math.abs(fit.b) + side * reach(fit.varianceB, fit.squares)
    return height > 0 ? points.first + Math.log(height / (margin ?? 1)) / k : Number.NEGATIVE_INFINITY
  }

  // Which way the curve falls or rises where it is a line or a step; both ways where even that is not told.
  const ways = (fit: FitForRate) => {
    const width = reach(fit.varianceB, fit.squares)
    return { falls: fit.b + width > 0, rises: fit.b - width < 0 }
  }
  const asLine = lineFits ? ways(line) : { falls: false, rises: false }
  const asStep = stepFits && points.first > 0 ? ways(step) : { falls: false, rises: false }
  const limits = (
    of: (fit: FitForRate, k: number, side: 1 | -1) => number,
    open: { lower: boolean; upper: boolean },
  ): ProfileLimits => ({
    lower: open.lower ? null : finite(extreme(of, -1)),
    upper: open.upper ? null : finite(extreme(of, 1)),
  })
  return {
    c: limits(c, { lower: asLine.falls, upper: asLine.rises }),
    a: limits(a, { lower: asLine.rises || asStep.rises, upper: asLine.falls || asStep.falls }),
    k: { lower: lineFits ? null : Math.exp(from), upper: stepFits ? null : Math.exp(to) },
    timeToMargin: limits(time, { lower: stepFits, upper: lineFits }),
  }
}

const finite = (limit: number) => (Number.isFinite(limit) ? limit : null)

/** The outermost place at which the squares come within the threshold, looked for from an end of the range. */
function crossing(excess: (logK: number) => number, end: number, best: number): number {
  const places = 120
  let outside = end
  for (let i = 1; i <= places; i++) {
    const inside = i === places ? best : end + ((best - end) * i) / places
    if (excess(inside) <= 0) return root(excess, outside, inside)
    outside = inside
  }
  return best
}
