/**
 * Where a continuous function crosses zero between two points at which its signs differ: the method of Brent
 * (1973), Algorithms for Minimization without Derivatives, chapter 4. It ends at the last digit that can be told.
 *
 * @throws RangeError when both ends lie on one side of zero
 *
 * @example
 * root((x) => x * x - 2, 1, 2) // 1.41421356237310
 */
export function root(f: (x: number) => number, from: number, to: number): number {
  let a = from
  let b = to
  let fa = f(a)
  let fb = f(b)
  if (fa === 0) return a
  if (fb === 0) return b
  if (fa > 0 === fb > 0) throw new RangeError('a root needs a change of sign between its two ends')
  let c = a
  let fc = fa
  let step = b - a
  let before = step
  for (let round = 0; round < 300; round++) {
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b
      b = c
      c = a
      fa = fb
      fb = fc
      fc = fa
    }
    const least = 2 * Number.EPSILON * Math.abs(b) + 1e-300
    const half = (c - b) / 2
    if (Math.abs(half) <= least || fb === 0) return b
    if (Math.abs(before) < least || Math.abs(fa) <= Math.abs(fb)) {
      step = half
      before = half
    } else {
      // Secant, or inverse quadratic interpolation where three points are known.
      const s = fb / fa
      let p = 2 * half * s
      let q = 1 - s
      if (a !== c) {
        const u = fa / fc
        const v = fb / fc
        p = s * (2 * half * u * (u - v) - (b - a) * (v - 1))
        q = (u - 1) * (v - 1) * (s - 1)
      }
      if (p > 0) q = -q
      p = Math.abs(p)
      if (2 * p < Math.min(3 * half * q - Math.abs(least * q), Math.abs(before * q))) {
        before = step
        step = p / q
      } else {
        step = half
        before = half
      }
    }
    a = b
    fa = fb
    b += Math.abs(step) > least ? step : Math.sign(half) * least
    fb = f(b)
    if (fb > 0 === fc > 0) {
      c = a
      fc = fa
      step = b - a
      before = step
    }
  }
  return b
}
