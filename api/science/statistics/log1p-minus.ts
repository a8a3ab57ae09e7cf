/**
 * ln(1 + u) − u without loss of digits near 0, for u > −1.
 *
 * With r = u / (2 + u), ln(1 + u) = 2 (r + r³/3 + r⁵/5 + …) and 2r − u = −u·r, so the difference is a sum
 * that loses nothing (Abramowitz & Stegun 1964, 4.1.27).
 *
 * @example
 * log1pMinus(1e-9) // -4.999999996666667e-19
 */
export function log1pMinus(u: number): number {
  if (u < -0.4 || u > 0.6) return Math.log1p(u) - u
  const r = u / (2 + u)
  const square = r * r
  let power = 2 * r * square
  let sum = -u * r
  for (let odd = 3; odd < 60; odd += 2) {
    const term = power / odd
    sum += term
    if (Math.abs(term) < 1e-18 * Math.abs(sum)) break
    power *= square
  }
  return sum
}
