import { fDistribution, fQuantile } from './f-distribution.ts'
import { choleskyInPlace } from './matrix-cholesky.ts'
import { moments } from './moments.ts'
import type { Unavailable } from './unavailable.ts'

export type Hotelling = {
  readonly T2: number
  readonly F: number
  readonly df1: number
  readonly df2: number
  readonly p: number
}
export type HotellingAnswer = Hotelling | Unavailable

/**
 * Is the mean of vectors zero? Hotelling's T² (1931), Ann. Math. Stat. 2, 360–378: n m′S⁻¹m, as F with p and n − p
 * degrees of freedom. `columns` holds each component's values, one a unit.
 *
 * @throws RangeError when there is no column or columns are of unequal length
 *
 * @example
 * hotelling([[1, 2, 3, 2], [0, 1, 1, 0]]) // { T2: 30, F: 10, df1: 2, df2: 2, p: 0.090909 }
 */
export function hotelling(columns: readonly (readonly number[])[]): HotellingAnswer {
  const n = sizeOf(columns)
  const p = columns.length
  if (n <= p) return { unavailable: `Fewer than ${p + 1} pairs cannot be tested in ${p} directions at once.` }
  const means = columns.map((column) => moments(column).mean)
  return tested({ n, p, df: n - 1, weight: n, means, cross: crossProducts(columns) })
}

/**
 * Do two sets of vectors have one mean, their spreads being alike? The two-sample T².
 *
 * @throws RangeError when columns are missing or of unequal length
 *
 * @example
 * hotellingOfTwo([[1, 2, 3]], [[4, 5, 6]]) // { T2: 13.5, F: 13.5, df1: 1, df2: 4, p: 0.02131 }
 */
export function hotellingOfTwo(
  a: readonly (readonly number[])[],
  b: readonly (readonly number[])[],
): HotellingAnswer {
  const [n1, n2] = [sizeOf(a), sizeOf(b)]
  const p = a.length
  if (b.length !== p) throw new RangeError('both sets have the same directions')
  const df = n1 + n2 - 2
  if (df < p) return { unavailable: `Fewer than ${p + 2} units cannot be tested in ${p} directions at once.` }
  const means = a.map((column, i) => moments(b[i]!).mean - moments(column).mean)
  const [one, other] = [crossProducts(a), crossProducts(b)]
  const cross = one.map((value, i) => value + other[i]!)
  return tested({ n: n1 + n2, p, df, weight: (n1 * n2) / (n1 + n2), means, cross })
}

/**
 * How many standard errors each single limit of T² reaches, all directions together.
 *
 * @example
 * simultaneousReach(8, 3, { level: 0.95 }) // 4.7665
 */
export function simultaneousReach(n: number, p: number, { level }: { readonly level: number }): number {
  return Math.sqrt(((p * (n - 1)) / (n - p)) * (1 / fQuantile(1 - level, n - p, p)))
}

function sizeOf(columns: readonly (readonly number[])[]): number {
  const n = columns[0]?.length ?? 0
  if (n === 0 || columns.some(({ length }) => length !== n))
    throw new RangeError('vectors need components of equal number')
  return n
}

function crossProducts(columns: readonly (readonly number[])[]): Float64Array {
  const p = columns.length
  const away = columns.map((column) => {
    const { fromOrigin } = moments(column)
    return column.map((value) => value - column[0]! - fromOrigin)
  })
  const cross = new Float64Array(p * p)
  for (let i = 0; i < p; i++)
    for (let j = 0; j < p; j++)
      cross[i * p + j] = away[i]!.reduce((sum, value, unit) => sum + value * away[j]![unit]!, 0)
  return cross
}

type Tested = {
  readonly n: number
  readonly p: number
  readonly df: number
  readonly weight: number
  readonly means: readonly number[]
  readonly cross: Float64Array
}

function tested({ p, df, weight, means, cross }: Tested): HotellingAnswer {
  // Scaled to a correlation matrix, so that one direction with a small spread is not taken for none.
  const scale = means.map((_, i) => Math.sqrt(cross[i * p + i]!))
  if (scale.some((it) => !(it > 0)))
    return { unavailable: 'In one direction all differences are equal, so there is no spread to judge by.' }
  const factor = cross.map((value, at) => value / (scale[Math.floor(at / p)]! * scale[at % p]!))
  if (choleskyInPlace(factor, p) === undefined || means.some((_, i) => factor[i * p + i]! < 1e-7))
    return {
      unavailable:
        'The differences lie on a line or a plane, so they cannot be tested in all directions at once.',
    }
  let length = 0
  const solved: number[] = []
  for (let i = 0; i < p; i++) {
    let rest = means[i]! / scale[i]!
    for (let j = 0; j < i; j++) rest -= factor[i * p + j]! * solved[j]!
    solved[i] = rest / factor[i * p + i]!
    length += solved[i]! ** 2
  }
  const T2 = weight * df * length
  const df2 = df - p + 1
  const F = (T2 * df2) / (p * df)
  return { T2, F, df1: p, df2, p: fDistribution(F, p, df2).upper }
}
