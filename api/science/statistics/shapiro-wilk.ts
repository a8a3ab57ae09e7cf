import { moments } from './moments.ts'
import { normalQuantile, normalUpper } from './normal.ts'
import type { Unavailable } from './unavailable.ts'

export type ShapiroWilk = { readonly W: number; readonly p: number }

// Royston (1995), Appl. Stat. 44, 547–551 (algorithm AS R94), in rising powers
const largest = [0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056]
const second = [0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633]
const fewMean = [0.544, -0.39978, 0.025054, -6.714e-4]
const fewLogSd = [1.3822, -0.77857, 0.062767, -0.0020322]
const manyMean = [-1.5861, -0.31082, -0.083751, 0.0038915]
const manyLogSd = [-0.4803, -0.082676, 0.0030302]

/**
 * Could these values come from a normal distribution? The test of Shapiro & Wilk (1965), Biometrika 52, 591–611, as
 * extended by Royston (1995) to 3–5000 values. With few values it can hardly find anything.
 *
 * @example
 * shapiroWilk([3.7, 1.97, 5.45, 1.56, 2.34]) // { W: 0.896197594594, p: 0.389228 }
 */
export function shapiroWilk(values: readonly number[]): ShapiroWilk | Unavailable {
  const n = values.length
  if (n < 3) return { unavailable: 'Shapiro and Wilk’s test needs at least 3 values.' }
  if (n > 5000)
    return {
      unavailable: 'Shapiro and Wilk’s test is known for up to 5000 values; look at the picture instead.',
    }
  const sorted = [...values].sort((one, other) => one - other)
  const range = sorted[n - 1]! - sorted[0]!
  if (!(range > 0)) return { unavailable: 'All values are equal, so they have no shape.' }
  if (!Number.isFinite(range)) return { unavailable: 'These numbers are too large to be worked with.' }
  const scaled = sorted.map((value) => (value - sorted[0]!) / range)
  const half = weights(n)
  let product = 0
  for (const [i, weight] of half.entries()) product += weight * (scaled[n - 1 - i]! - scaled[i]!)
  const { squares } = moments(scaled)
  const root = Math.sqrt(squares)
  // 1 − W as a product of two factors keeps its digits where W is nearly 1.
  const short = Math.max(0, ((root - product) * (root + product)) / squares)
  return { W: 1 - short, p: Math.min(1, pValue(1 - short, short, n)) }
}

/** Weights of the differences largest − smallest, second largest − second smallest and so on. */
function weights(n: number): number[] {
  if (n === 3) return [Math.SQRT1_2]
  const m = Array.from({ length: n >> 1 }, (_, i) => -normalQuantile((i + 1 - 0.375) / (n + 0.25)))
  const sumSquares = 2 * m.reduce((sum, it) => sum + it * it, 0)
  const inverse = 1 / Math.sqrt(n)
  const given = [polynomial(largest, inverse) + m[0]! / Math.sqrt(sumSquares)]
  if (n > 5) given.push(polynomial(second, inverse) + m[1]! / Math.sqrt(sumSquares))
  const left = m.slice(0, given.length).reduce((sum, it) => sum - 2 * it * it, sumSquares)
  const scale = Math.sqrt(left / given.reduce((sum, it) => sum - 2 * it * it, 1))
  return m.map((it, i) => given[i] ?? it / scale)
}

function pValue(W: number, short: number, n: number): number {
  if (n === 3) return Math.max(0, (6 / Math.PI) * (Math.asin(Math.sqrt(W)) - Math.asin(Math.sqrt(0.75))))
  if (short === 0) return 1
  const y = Math.log(short)
  if (n > 11) {
    const x = Math.log(n)
    return normalUpper((y - polynomial(manyMean, x)) / Math.exp(polynomial(manyLogSd, x)))
  }
  const bound = -2.273 + 0.459 * n
  // Further from normal than the approximation can say.
  if (y >= bound) return 1e-99
  return normalUpper((-Math.log(bound - y) - polynomial(fewMean, n)) / Math.exp(polynomial(fewLogSd, n)))
}

function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0)
}
