import { stirlingRemainder } from './log-gamma.ts'
import { log1pMinus } from './log1p-minus.ts'
import type { Tails } from './tails.ts'

/**
 * The regularised incomplete gamma functions: lower P(a, x), upper Q(a, x).
 *
 * Series below a + 1, continued fraction by the method of Lentz above (DLMF 8.7.1 and 8.9.2). The front factor
 * x^a e^(−x) / Γ(a) is taken about its peak, so that large a keep their digits.
 *
 * @throws RangeError unless a is more than 0 and x at least 0
 *
 * @example
 * incompleteGamma(1, 2).upper // 0.135335283236613
 */
export function incompleteGamma(a: number, x: number): Tails {
  if (!(a > 0)) throw new RangeError('the gamma function takes a number above 0')
  if (!(x >= 0)) throw new RangeError('the incomplete gamma function takes 0 or more')
  if (x === 0) return { lower: 0, upper: 1 }
  if (x === Number.POSITIVE_INFINITY) return { lower: 1, upper: 0 }
  const away = (x - a) / a
  const shape = away < -0.9 ? Math.log(x / a) - away : log1pMinus(away)
  const front = Math.exp(0.5 * Math.log(a / (2 * Math.PI)) - stirlingRemainder(a) + a * shape)
  // Beyond what a number can hold, and before the loops below would run on nothing.
  if (!(front > 0)) return x < a ? { lower: 0, upper: 1 } : { lower: 1, upper: 0 }
  if (x < a + 1) {
    const lower = Math.min(1, (front * series(a, x)) / a)
    // With a very small the lower side can be nearly all; the fraction then gives the upper by itself.
    return { lower, upper: lower < 0.9 || x < 0.05 ? 1 - lower : front * fraction(a, x) }
  }
  const upper = Math.min(1, front * fraction(a, x))
  return { lower: 1 - upper, upper }
}

function series(a: number, x: number): number {
  let sum = 1
  let term = 1
  for (let n = 1; n < 10_000_000; n++) {
    term *= x / (a + n)
    sum += term
    if (term < 1e-17 * sum) break
  }
  return sum
}

function fraction(a: number, x: number): number {
  const tiny = 1e-300
  let b = x + 1 - a
  let c = 1 / tiny
  let d = 1 / (Math.abs(b) < tiny ? tiny : b)
  let h = d
  for (let n = 1; n < 10_000_000; n++) {
    const numerator = -n * (n - a)
    b += 2
    d = numerator * d + b
    d = 1 / (Math.abs(d) < tiny ? tiny : d)
    c = b + numerator / c
    if (Math.abs(c) < tiny) c = tiny
    const factor = d * c
    h *= factor
    if (Math.abs(factor - 1) < 1e-16) break
  }
  return h
}
