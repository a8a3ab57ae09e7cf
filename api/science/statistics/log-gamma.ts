const halfLogTwoPi = 0.9189385332046728

// B(2k) / (2k (2k − 1)), k = 1 … 8: Abramowitz & Stegun (1964), 6.1.40
const stirling = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156, -3617 / 122400]

/**
 * What Stirling's formula leaves over: ln Γ(x) − [(x − ½) ln x − x + ½ ln 2π], for x > 0.
 *
 * Kept apart because a ratio of gamma functions of large arguments loses its digits otherwise. Below 10 the
 * argument is raised by the recurrence of Γ, above it the series of Stirling is used (Abramowitz & Stegun
 * 1964, 6.1.15 and 6.1.40).
 *
 * @example
 * stirlingRemainder(1) // 0.08106146679533
 */
export function stirlingRemainder(x: number): number {
  let sum = 0
  let at = x
  while (at < 10) {
    sum += (at + 0.5) * Math.log1p(1 / at) - 1
    at += 1
  }
  const square = 1 / (at * at)
  let power = 1 / at
  for (const coefficient of stirling) {
    sum += coefficient * power
    power *= square
  }
  return sum
}

/**
 * The natural logarithm of Γ(x), for x > 0.
 *
 * @example
 * logGamma(10) // 12.80182748008
 */
export function logGamma(x: number): number {
  return (x - 0.5) * Math.log(x) - x + halfLogTwoPi + stirlingRemainder(x)
}
