import type { Tails } from './tails.ts'

const rootHalf = Math.SQRT1_2
const rootTwoPi = Math.sqrt(2 * Math.PI)

/**
 * The normal distribution, mean 0 and standard deviation 1, at z.
 *
 * The error function by the rational approximations of Cody (1969), Math. Comp. 23, 631–637.
 *
 * @example
 * normal(-1.96).lower // 0.0249978951482204
 */
export function normal(z: number): Tails {
  const small = normalUpper(Math.abs(z))
  return z < 0 ? { lower: small, upper: 1 - small } : { lower: 1 - small, upper: small }
}

/**
 * The probability of more than z, to full digits in the far tail.
 *
 * @example
 * normalUpper(9) // 1.12858840595384e-19
 */
export function normalUpper(z: number): number {
  return 0.5 * complementaryError(z * rootHalf)
}

/**
 * The height of the normal curve at z.
 *
 * @example
 * normalDensity(0) // 0.398942280401433
 */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / rootTwoPi
}

/**
 * The probability between two places, a ≤ b, to full digits where both lie far out or near together.
 *
 * @example
 * normalBetween(-1.96, 1.96) // 0.950004209703559
 */
export function normalBetween(a: number, b: number): number {
  const width = b - a
  const middle = (a + b) / 2
  if (width * (1 + Math.abs(middle)) < 0.01) {
    // Taylor's series about the middle; what is left out is beyond the last digit.
    const square = middle * middle
    const second = ((square - 1) * width * width) / 24
    const fourth = ((square * square - 6 * square + 3) * width ** 4) / 1920
    return normalDensity(middle) * width * (1 + second + fourth)
  }
  return middle > 0 ? normalUpper(a) - normalUpper(b) : normalUpper(-b) - normalUpper(-a)
}

/**
 * The place of the normal distribution that has the probability `p` below it.
 *
 * Hastings' approximation (Abramowitz & Stegun 1964, 26.2.23), mended by the method of Halley until no digit
 * changes.
 *
 * @throws RangeError when p is not strictly between 0 and 1
 *
 * @example
 * normalQuantile(0.975) // 1.95996398454005
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError('a probability lies strictly between 0 and 1')
  if (p === 0.5) return 0
  const tail = p < 0.5 ? p : 1 - p
  const t = Math.sqrt(-2 * Math.log(tail))
  let x =
    t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)))
  for (let round = 0; round < 4; round++) {
    const excess = (normalUpper(x) - tail) / normalDensity(x)
    const change = excess / (1 - (x * excess) / 2)
    x += change
    if (Math.abs(change) < 1e-16 * Math.abs(x)) break
  }
  return p < 0.5 ? -x : x
}

const erfTop = [
  3.1611237438705655, 113.86415415105016, 377.485237685302, 3209.3775891384694, 0.18577770618460315,
] as const
const erfBottom = [23.601290952344122, 244.02463793444417, 1282.6165260773723, 2844.236833439171] as const
const middleTop = [
  0.5641884969886701, 8.883149794388377, 66.11919063714163, 298.6351381974001, 881.952221241769,
  1712.0476126340707, 2051.0783778260716, 1230.3393547979972, 2.1531153547440383e-8,
] as const
const middleBottom = [
  15.744926110709835, 117.6939508913125, 537.1811018620099, 1621.3895745666903, 3290.7992357334597,
  4362.619090143247, 3439.3676741437216, 1230.3393548037495,
] as const
const farTop = [
  0.30532663496123236, 0.36034489994980445, 0.12578172611122926, 0.016083785148742275, 0.0006587491615298378,
  0.016315387137302097,
] as const
const farBottom = [
  2.568520192289822, 1.8729528499234673, 0.5279051029514285, 0.06051834131244132, 0.0023352049762686918,
] as const

function complementaryError(x: number): number {
  const y = Math.abs(x)
  if (y <= 0.46875) {
    const square = y * y
    let top = erfTop[4] * square
    let bottom = square
    for (let i = 0; i < 3; i++) {
      top = (top + erfTop[i]!) * square
      bottom = (bottom + erfBottom[i]!) * square
    }
    return 1 - (x * (top + erfTop[3])) / (bottom + erfBottom[3])
  }
  let result: number
  if (y <= 4) {
    let top = middleTop[8] * y
    let bottom = y
    for (let i = 0; i < 7; i++) {
      top = (top + middleTop[i]!) * y
      bottom = (bottom + middleBottom[i]!) * y
    }
    result = (top + middleTop[7]) / (bottom + middleBottom[7])
  } else {
    if (y > 27.5) return x < 0 ? 2 : 0
    const inverse = 1 / (y * y)
    let top = farTop[5] * inverse
    let bottom = inverse
    for (let i = 0; i < 4; i++) {
      top = (top + farTop[i]!) * inverse
      bottom = (bottom + farBottom[i]!) * inverse
    }
    result = (0.5641895835477563 - (inverse * (top + farTop[4])) / (bottom + farBottom[4])) / y
  }
  // exp(−y²) in two factors, the first exact, so that the square loses no digits.
  const coarse = Math.trunc(y * 16) / 16
  result *= Math.exp(-coarse * coarse) * Math.exp(-(y - coarse) * (y + coarse))
  return x < 0 ? 2 - result : result
}
