import { type CurveLimits, curveLimits, type ProfileLimits, type RateRange } from './curve-region.ts'
import { type CurvePoints, curvePoints, fitForRate } from './exponential-fits.ts'
import { fDistribution } from './f-distribution.ts'
import { nonlinearLeastSquares } from './nonlinear-least-squares.ts'
import { largestOn } from './search-line.ts'
import { studentTQuantile } from './student-t.ts'
import { tooLarge, type Unavailable } from './unavailable.ts'

/** Limits by profile likelihood; null where there is none, with what is unbounded said beside it. */
export type CurveParameter = { readonly estimate: number } & (
  | ({ readonly se: number; readonly lowerUnbounded?: true; readonly upperUnbounded?: true } & ProfileLimits)
  | Unavailable
)
export type LackOfFit = { readonly F: number; readonly df1: number; readonly df2: number; readonly p: number }

export type Saturation = {
  readonly converged: true
  readonly c: CurveParameter
  readonly a: CurveParameter
  readonly k: CurveParameter
  readonly residualSd: number | Unavailable
  readonly df: number
  readonly lackOfFit: LackOfFit | Unavailable
  readonly timeToMargin?: CurveParameter
}
export type NoCurve = Unavailable & { readonly converged: false }

/**
 * The curve that levels off, y = c + a·exp(−k·t): estimates, their linear standard errors, and limits by profile
 * likelihood. With a margin, the time after which the curve is within it of its plateau, ln(|a| / margin) / k.
 *
 * There is no finite curve when a line or a step fits as well, when three times do not run one way, and with fewer than
 * three times.
 *
 * @throws RangeError when the lists are empty or of unequal length, or times lie below 0
 *
 * @example
 * saturation([0, 0, 1, 1, 2, 2, 4, 4], [9, 9.2, 5, 5.2, 3, 3.2, 1.5, 1.7]).k // { estimate: 0.69314718, se: 0.0337919, lower: 0.60925, upper: 0.78356 }
 */
export function saturation(
  time: readonly number[],
  value: readonly number[],
  { margin, level = 0.95 }: { readonly margin?: number | undefined; readonly level?: number } = {},
): Saturation | NoCurve {
  if (time.some((t) => !(t >= 0))) throw new RangeError('times are 0 or more')
  const points = curvePoints(time, value)
  const reason = withoutCurve(points)
  if (reason) return noCurve(reason)
  const range = { from: Math.log(1e-5 / points.length), to: Math.log(40 / points.gap) }
  const found = bestRate(points, range)
  if (typeof found === 'string') return noCurve(found)
  return described(points, { ...found, range, origin: value[0] ?? 0, margin, level })
}

const noCurve = (unavailable: string): NoCurve => ({ unavailable, converged: false })

function withoutCurve({ times, length }: CurvePoints): string | undefined {
  if (times.length < 3) return 'A curve that levels off needs at least three different times.'
  const means = times.map(({ mean }) => mean)
  if (means.some((mean) => !Number.isFinite(mean * mean)) || !Number.isFinite(length))
    return 'These numbers are too large to be worked with.'
  if (means.every((mean) => mean === means[0])) return 'The values do not change with time.'
  const [first = 0, second = 0, third = 0] = means
  if (times.length === 3 && (second - first) * (third - second) <= 0)
    return 'The means of the three times do not run one way.'
  return undefined
}

type Best = { readonly logK: number; readonly squares: number }

function bestRate(points: CurvePoints, range: RateRange): Best | string {
  const squares = (logK: number) => fitForRate(points, Math.exp(logK)).squares
  const places = Math.min(500, Math.ceil((range.to - range.from) / 0.06))
  const best = largestOn((logK) => -squares(logK), { ...range, places })
  const least = -best.value * (1 + 1e-9) + points.rounding
  if (fitForRate(points, 0).squares <= least)
    return 'A straight line fits as well as any curve: no levelling off can be seen.'
  if (fitForRate(points, Number.POSITIVE_INFINITY).squares <= least)
    return 'A step after the first time fits as well as any curve: how fast it levels off cannot be seen.'
  return { logK: best.at, squares: -best.value }
}

type Described = Best & {
  readonly range: RateRange
  readonly origin: number
  readonly margin: number | undefined
  readonly level: number
}

function described(points: CurvePoints, it: Described): Saturation | NoCurve {
  const { origin, margin, level, range } = it
  const { k, b, c, squares, inverse, converged } = polished(points, it)
  if (!converged) return noCurve('The search for a curve did not come to rest.')
  const { first, n, rounding } = points
  const df = n - 3
  const growth = Math.exp(k * first)
  const a = b * growth
  const time = margin === undefined ? undefined : first + Math.log(Math.abs(b) / margin) / k
  if (![a, c, k, time ?? 0].every(Number.isFinite))
    return noCurve('These numbers are too large to be worked with.')
  const alone = (unavailable: string): Saturation => {
    const none = { unavailable }
    const part = (estimate: number) => ({ estimate, unavailable })
    return {
      converged: true,
      c: part(origin + c),
      a: part(a),
      k: part(k),
      residualSd: none,
      df,
      lackOfFit: none,
      ...(time === undefined ? {} : { timeToMargin: part(time) }),
    }
  }
  if (df === 0) return alone('Three points always lie on such a curve, so they have no spread to judge by.')
  if (squares <= rounding)
    return alone('The points lie exactly on a curve, so they have no spread to judge by.')

  const variance = squares / df
  const threshold = squares * (1 + studentTQuantile((1 - level) / 2, df) ** 2 / df)
  const limits = curveLimits(points, { threshold, best: Math.log(k), range, margin })
  const se = (...slope: readonly [number, number, number]) =>
    Math.sqrt(
      variance *
        slope.reduce(
          (sum, one, i) =>
            sum + slope.reduce((row, other, j) => row + one * other * (inverse[i]?.[j] ?? 0), 0),
          0,
        ),
    )
  const shifted = ({ lower, upper }: CurveLimits['c']) => ({
    lower: lower === null ? null : origin + lower,
    upper: upper === null ? null : origin + upper,
  })
  return {
    converged: true,
    c: parameter(origin + c, se(1, 0, 0), shifted(limits.c)),
    a: parameter(a, se(0, growth, a * first), limits.a),
    k: parameter(k, se(0, 0, 1), limits.k),
    residualSd: Math.sqrt(variance),
    df,
    lackOfFit: lackOfFit(points, squares),
    ...(time === undefined
      ? {}
      : { timeToMargin: parameter(time, se(0, 1 / (b * k), (first - time) / k), limits.timeToMargin) }),
  }
}

function parameter(estimate: number, se: number, { lower, upper }: ProfileLimits): CurveParameter {
  if (!Number.isFinite(se)) return { estimate, ...tooLarge }
  return {
    estimate,
    se,
    lower,
    upper,
    ...(lower === null ? { lowerUnbounded: true as const } : {}),
    ...(upper === null ? { upperUnbounded: true as const } : {}),
  }
}

/** c, b and k all together, to the last digit; each time stands with the root of its count. */
function polished(points: CurvePoints, { logK }: Best) {
  const { times, first, pure } = points
  const rate = Math.exp(logK)
  const start = fitForRate(points, rate)
  const fit = nonlinearLeastSquares(
    ([c = 0, b = 0, k = 0]) => {
      const rows = times.map(({ time, n, mean }) => {
        const weight = Math.sqrt(n)
        const e = Math.exp(-k * (time - first))
        return {
          residual: weight * (mean - c - b * e),
          slope: [weight, weight * e, -weight * b * (time - first) * e],
        }
      })
      return { residuals: rows.map(({ residual }) => residual), slopes: rows.map(({ slope }) => slope) }
    },
    [start.c, start.b, rate],
    { rounds: 200 },
  )
  const [c = 0, b = 0, k = 0] = fit.parameters
  return { c, b, k, squares: pure + fit.squares, inverse: fit.inverse, converged: fit.converged && k > 0 }
}

/** Is the curve the right shape? Means of times against the spread within times. */
function lackOfFit({ times, n, pure }: CurvePoints, squares: number): LackOfFit | Unavailable {
  const df1 = times.length - 3
  const df2 = n - times.length
  if (df1 === 0) return { unavailable: 'With three times any curve goes through their means.' }
  if (df2 === 0 || pure === 0) return { unavailable: 'Without repeats at a time the shape cannot be tested.' }
  const F = Math.max(0, squares - pure) / df1 / (pure / df2)
  return { F, df1, df2, p: fDistribution(F, df1, df2).upper }
}
