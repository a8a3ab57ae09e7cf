import { sum } from 'simple-statistics'
import { moments } from './moments.ts'
import { studentTQuantile } from './student-t.ts'
import { tInterval } from './t-interval.ts'
import { isUnavailable, tooLarge, type Unavailable } from './unavailable.ts'

export type LineEstimate = {
  readonly estimate: number
  readonly se: number
  readonly lower: number
  readonly upper: number
}
type WithoutSpread = Unavailable & { readonly estimate: number }

export type StraightLine = {
  readonly intercept: LineEstimate | WithoutSpread | Unavailable
  readonly slope: (LineEstimate & { readonly t: number; readonly p: number }) | WithoutSpread | Unavailable
  readonly df: number
  readonly residualSd: number | Unavailable
  readonly rSquared: number | Unavailable
}

/**
 * A straight line through points by least squares, with t intervals (Draper & Smith, Applied Regression Analysis,
 * chapter 1). Points exactly on a line keep its estimates, without limits: there is no spread to judge by.
 *
 * @throws RangeError when the lists are empty or of unequal length
 *
 * @example
 * straightLine([0, 1, 2, 3], [1, 3, 4, 6]).slope // { estimate: 1.6, se: 0.141421, lower: 0.9915, upper: 2.2085, t: 11.3137, p: 0.00772 }
 */
export function straightLine(
  x: readonly number[],
  y: readonly number[],
  { level = 0.95 }: { readonly level?: number } = {},
): StraightLine {
  if (x.length === 0 || x.length !== y.length) throw new RangeError('a line needs as many y as x')
  const df = Math.max(0, x.length - 2)
  const none = (unavailable: string): StraightLine => {
    const part = { unavailable }
    return { intercept: part, slope: part, df, residualSd: part, rSquared: part }
  }
  const fit = leastSquaresLine(x, y)
  if (fit === 'no-line') return none('All x are equal, so no line is told.')
  if (![fit.slope, fit.intercept, fit.squaresX, fit.squaresY, fit.rest].every(Number.isFinite))
    return none(tooLarge.unavailable)
  const rSquared = fit.squaresY > 0 ? 1 - fit.rest / fit.squaresY : flat
  if (df === 0 || fit.onLine) {
    const unavailable =
      df === 0
        ? 'Two points always lie on a line, so they have no spread to judge by.'
        : 'The points lie exactly on a line, so they have no spread to judge by.'
    return {
      intercept: { estimate: fit.intercept, unavailable },
      slope: { estimate: fit.slope, unavailable },
      df,
      residualSd: df === 0 ? { unavailable } : Math.sqrt(fit.rest / df),
      rSquared,
    }
  }
  const residualSd = Math.sqrt(fit.rest / df)
  const part = (estimate: number, se: number) => {
    const interval = tInterval({ estimate, se, df }, { level })
    return isUnavailable(interval) ? { estimate, ...interval } : { estimate, se, ...interval }
  }
  const root = Math.sqrt(fit.squaresX)
  const slope = part(fit.slope, residualSd / root)
  const whole = part(fit.intercept, residualSd * Math.hypot(1 / Math.sqrt(x.length), fit.meanX / root))
  if (isUnavailable(whole)) return { intercept: whole, slope, df, residualSd, rSquared }
  const { estimate, se, lower, upper } = whole
  return { intercept: { estimate, se, lower, upper }, slope, df, residualSd, rSquared }
}

const flat: Unavailable = { unavailable: 'All y are equal, so a line has nothing to explain.' }

function leastSquaresLine(x: readonly number[], y: readonly number[]) {
  const [mx, my] = [moments(x), moments(y)]
  if (mx.squares === 0) return 'no-line'
  // Both are counted from their first value, and then from their mean, so that a large common part costs no digits.
  const [x0 = 0, y0 = 0] = [x[0], y[0]]
  const dx = x.map((value) => value - x0 - mx.fromOrigin)
  const dy = y.map((value) => value - y0 - my.fromOrigin)
  const slope = sum(dx.map((value, i) => value * dy[i]!)) / mx.squares
  const rest = sum(dx.map((value, i) => (dy[i]! - slope * value) ** 2))
  const size = y.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
  return {
    slope,
    intercept: my.mean - slope * mx.mean,
    rest,
    onLine: rest <= x.length * (8 * Number.EPSILON * size) ** 2,
    squaresX: mx.squares,
    squaresY: my.squares,
    meanX: mx.mean,
  }
}

export type LinePlace = {
  readonly fit: number
  readonly se: number
  /** Limits of the line itself, and of one more reading. */
  readonly line: { readonly lower: number; readonly upper: number }
  readonly reading: { readonly lower: number; readonly upper: number }
}

/**
 * Where the line stands at one place, with the limits of the line and of one more reading there.
 *
 * @throws RangeError as straightLine does
 *
 * @example
 * placeOnLine([0, 1, 2, 3], [1, 3, 4, 6], { at: 4 }) // { fit: 7.5, se: 0.3873, line: { lower: 5.8336, upper: 9.1664 } }
 */
export function placeOnLine(
  x: readonly number[],
  y: readonly number[],
  { at, level = 0.95 }: { readonly at: number; readonly level?: number },
): LinePlace | Unavailable {
  const line = straightLine(x, y, { level })
  const { slope, residualSd, df } = line
  if (isUnavailable(slope)) return { unavailable: slope.unavailable }
  if (isUnavailable(residualSd)) return residualSd
  const mx = moments(x)
  const away = at - mx.mean
  const fit = moments(y).mean + slope.estimate * away
  const se = residualSd * Math.hypot(1 / Math.sqrt(x.length), away / Math.sqrt(mx.squares))
  const t = -studentTQuantile((1 - level) / 2, df)
  const within = (spread: number) => ({ lower: fit - t * spread, upper: fit + t * spread })
  return { fit, se, line: within(se), reading: within(Math.hypot(se, residualSd)) }
}
