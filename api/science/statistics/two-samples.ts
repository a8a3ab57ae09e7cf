import { moments } from './moments.ts'
import { oneSample } from './one-sample.ts'
import { studentT, studentTQuantile } from './student-t.ts'
import { type Estimated, type TInterval, tInterval } from './t-interval.ts'
import { isUnavailable, type Unavailable } from './unavailable.ts'

export type TwoSamplesQuestion = {
  /** Values at the same place in both lists belong to one unit. */
  readonly paired?: boolean
  /** Both groups are taken to have one spread; otherwise Welch's method. */
  readonly pooled?: boolean
  readonly margin?: number | undefined
  /** Two-sided, of the interval. */
  readonly level?: number
  /** One-sided, of equivalence and of "no worse". */
  readonly confidence?: number
}

export type Equivalence = {
  readonly pLower: number
  readonly pUpper: number
  readonly p: number
  readonly lower: number
  readonly upper: number
  readonly equivalent: boolean
}
export type NoWorse = { readonly upper: number; readonly holds: boolean }
type Part<Answer> = Answer | Unavailable

export type TwoSamples = {
  /** mean of b − mean of a */
  readonly difference: number
  readonly welch: boolean
  readonly equivalence?: Part<Equivalence>
  readonly noWorse?: Part<NoWorse>
} & Part<TInterval & { readonly se: number; readonly df: number }>

/**
 * Do two groups of units differ, is the difference within a margin, and is b no worse than a where smaller is better?
 *
 * Welch (1947), Biometrika 34, 28–35, unless the units are pairs or one spread is asked for. Equivalence by two
 * one-sided tests (Schuirmann 1987, J. Pharmacokin. Biopharm. 15, 657–680).
 *
 * @throws RangeError when a list is empty, or when pairs are asked of lists of unequal length
 *
 * @example
 * compareTwo([1, 2, 3], [2, 4, 6]) // { difference: 2, se: 1.29099, df: 2.9411765, t: 1.54919, p: 0.22088, welch: true }
 */
export function compareTwo(
  a: readonly number[],
  b: readonly number[],
  { paired = false, pooled = false, margin, level = 0.95, confidence = 0.95 }: TwoSamplesQuestion = {},
): TwoSamples {
  const found = paired ? pairs(a, b) : pooled ? oneSpread(a, b) : welch(a, b)
  const { difference } = found
  const head = { difference, welch: !paired && !pooled }
  const interval = isUnavailable(found)
    ? found
    : tInterval({ estimate: difference, se: found.se, df: found.df }, { level })
  if (isUnavailable(found) || isUnavailable(interval)) {
    const { unavailable } = interval as Unavailable
    const none = { unavailable }
    return { ...head, unavailable, ...(margin === undefined ? {} : { equivalence: none, noWorse: none }) }
  }
  const { se, df } = found
  const answer = { ...head, se, df, ...interval }
  if (margin === undefined) return answer
  return { ...answer, ...againstMargin({ estimate: difference, se, df }, { margin, confidence }) }
}

type Found = { readonly difference: number } & Part<{ readonly se: number; readonly df: number }>

function pairs(a: readonly number[], b: readonly number[]): Found {
  if (a.length !== b.length) throw new RangeError('pairs need two lists of equal length')
  const differences = b.map((value, place) => value - (a[place] ?? 0))
  const scale = [...a, ...b].reduce((most, value) => Math.max(most, Math.abs(value)), 0)
  const found = oneSample(differences, { level: 0.5, scale })
  if (!isUnavailable(found)) return { difference: found.mean, se: found.se, df: found.df }
  const unavailable =
    found.n < 2
      ? 'One pair alone has no spread to judge by.'
      : 'All differences are equal: were values copied or rounded?'
  return { difference: found.mean, unavailable }
}

function oneSpread(a: readonly number[], b: readonly number[]): Found {
  const { difference, one, other } = both(a, b)
  const df = one.n + other.n - 2
  if (df === 0) return { difference, unavailable: 'One value in each group has no spread to judge by.' }
  const se = Math.sqrt(((one.squares + other.squares) / df) * (1 / one.n + 1 / other.n))
  if (se === 0)
    return { difference, unavailable: 'All values within each group are equal: were they copied or rounded?' }
  return { difference, se, df }
}

function welch(a: readonly number[], b: readonly number[]): Found {
  const { difference, one, other } = both(a, b)
  if (one.n < 2 || other.n < 2)
    return { difference, unavailable: 'Each group needs two values to show its own spread.' }
  const [va, vb] = [one, other].map(({ n, squares }) => squares / (n - 1) / n) as [number, number]
  const variance = va + vb
  if (variance === 0)
    return { difference, unavailable: 'All values within each group are equal: were they copied or rounded?' }
  const share = va / variance
  const df = 1 / (share ** 2 / (one.n - 1) + (1 - share) ** 2 / (other.n - 1))
  if (!(df > 0)) return { difference, unavailable: 'These numbers are too large to be worked with.' }
  return { difference, se: Math.sqrt(variance), df }
}

function both(a: readonly number[], b: readonly number[]) {
  const one = moments(a)
  const other = moments(b, a[0])
  return { one, other, difference: other.fromOrigin - one.fromOrigin }
}

/**
 * An estimated difference held against a margin on both sides, and on the upper side alone.
 *
 * @example
 * againstMargin({ estimate: 0, se: 0.2, df: 15 }, { margin: 1, confidence: 0.95 }) // { equivalence: { p: 0.0000791848, lower: -0.35061, upper: 0.35061, equivalent: true }, noWorse: { upper: 0.35061, holds: true } }
 */
export function againstMargin(
  { estimate, se, df }: Estimated,
  { margin, confidence }: { readonly margin: number; readonly confidence: number },
): { equivalence: Equivalence; noWorse: NoWorse } {
  const pLower = studentT((estimate + margin) / se, df).upper
  const pUpper = studentT((estimate - margin) / se, df).lower
  const reach = -studentTQuantile(1 - confidence, df) * se
  const lower = estimate - reach
  const upper = estimate + reach
  const equivalent = lower > -margin && upper < margin
  return {
    equivalence: { pLower, pUpper, p: Math.max(pLower, pUpper), lower, upper, equivalent },
    noWorse: { upper, holds: upper < margin },
  }
}
