import { logGamma, stirlingRemainder } from './log-gamma.ts'
import { log1pMinus } from './log1p-minus.ts'
import type { Tails } from './tails.ts'

const tiny = 1e-300

/**
 * The regularised incomplete beta function, both sides of it: the lower is I_x(a, b), the upper I_(1−x)(b, a).
 *
 * The place is given by its odds x / (1 − x), so that x near 1 keeps its digits. `logOdds` is for odds that no
 * number can hold. A continued fraction by the method of Lentz, with a front factor in the form of a saddle point,
 * ½ ln(ab/n) + remainders of Stirling + a·ln(xn/a) + b·ln(yn/b) with n = a + b, which keeps its digits for large
 * a and b.
 *
 * @throws RangeError unless a and b are more than 0
 *
 * @example
 * incompleteBeta(1, 2, { odds: 1 / 9 }).lower // 0.19
 */
export function incompleteBeta(
  a: number,
  b: number,
  { odds, logOdds = Math.log(odds) }: { readonly odds: number; readonly logOdds?: number },
): Tails {
  if (!(a > 0 && b > 0)) throw new RangeError('the beta function takes numbers above 0')
  if (logOdds === Number.NEGATIVE_INFINITY) return { lower: 0, upper: 1 }
  if (logOdds === Number.POSITIVE_INFINITY) return { lower: 1, upper: 0 }
  if (logOdds < -460) return farBelow(a, b, logOdds)
  if (logOdds > 460) return turned(farBelow(b, a, -logOdds))
  const x = odds / (1 + odds)
  const y = 1 / (1 + odds)
  if (x * (a + b + 2) > a + 1) return turned(below(b, a, y, x))
  return below(a, b, x, y)
}

const turned = ({ lower, upper }: Tails): Tails => ({ lower: upper, upper: lower })

/** Where x is so small that I_x = x^a / (a B(a, b)) to the last digit. */
function farBelow(a: number, b: number, logOdds: number): Tails {
  const lower = Math.exp(a * logOdds - Math.log(a) - logBeta(a, b))
  return { lower: Math.min(1, lower), upper: Math.max(0, 1 - lower) }
}

function below(a: number, b: number, x: number, y: number): Tails {
  const front = Math.exp(betaFront(a, b, x, y))
  if (!(front > 0)) return { lower: 0, upper: 1 }
  const lower = Math.min(1, front * fraction(a, b, x, y))
  // With a very small the lower side can be nearly all; the upper is then worked out by itself.
  if (lower < 0.9) return { lower, upper: 1 - lower }
  return { lower, upper: Math.min(1, front * fraction(b, a, y, x)) }
}

/**
 * ln B(a, b), the logarithm of the beta function.
 *
 * @example
 * logBeta(2, 3) // -2.484906649788
 */
export function logBeta(a: number, b: number): number {
  if (a > b) return logBeta(b, a)
  const n = a + b
  const rise = (b - 0.5) * Math.log1p(a / b) + a * Math.log(n) - a
  return logGamma(a) - rise - stirlingRemainder(n) + stirlingRemainder(b)
}

/**
 * ln( x^a (1 − x)^b / B(a, b) ), for x and y = 1 − x both given.
 *
 * @example
 * betaFront(2, 3, 0.5, 0.5) // -0.980829253011726
 */
export function betaFront(a: number, b: number, x: number, y: number): number {
  const n = a + b
  const away = x * b - y * a
  return (
    0.5 * (Math.log(a) + Math.log(b / n) - Math.log(2 * Math.PI)) +
    (stirlingRemainder(n) - stirlingRemainder(a) - stirlingRemainder(b)) +
    a * logOfOnePlus(away / a, x / (a / n)) +
    b * logOfOnePlus(-away / b, y / (b / n))
  )
}

/** ln(1 + u) − u; where 1 + u is nearly 0 it is taken from the ratio itself. */
function logOfOnePlus(u: number, ratio: number): number {
  return u < -0.9 ? Math.log(ratio) - u : log1pMinus(u)
}

/**
 * I_x(a, b) = x^a y^b / B(a, b) × this, by the continued fraction of DiDonato & Morris (1992), ACM Trans. Math.
 * Softw. 18, 360–373. Its λ = ay − bx is taken from x and y = 1 − x, so nothing cancels where one of them is
 * nearly 1.
 */
function fraction(a: number, b: number, x: number, y: number): number {
  const lambda = a * y - b * x
  let value = (a * (lambda + 1)) / (a + 1)
  if (Math.abs(value) < tiny) value = tiny
  let c = value
  let d = 0
  for (let n = 1; n < 1_000_000; n++) {
    const width = a + 2 * n - 1
    const ratio = (n * (b - n) * x) / width
    const alpha = (((a + n - 1) * (a + b + n - 1)) / width) * ratio * x
    const beta = n + ratio + ((a + n) / (width + 2)) * (lambda + 1 + n * (1 + y))
    d = beta + alpha * d
    if (Math.abs(d) < tiny) d = tiny
    d = 1 / d
    c = beta + alpha / c
    if (Math.abs(c) < tiny) c = tiny
    const factor = c * d
    value *= factor
    if (Math.abs(factor - 1) < 2e-16) break
  }
  return 1 / value
}
