import { stirlingRemainder } from './log-gamma.ts'

// Ω e^Ω = 1, so that v − exp(−v) = 0 at v = Ω: the nodes are counted from there.
const omega = 0.567143290409784

/**
 * The mean of `f(s)` over s = √(χ²/df), the estimated standard deviation when the true one is 1: what turns a
 * probability for a known spread into one for an estimated spread.
 *
 * The trapezoid rule in u = v − Ω, with ln s = ln peak + v − exp(−v). The weight dies off doubly exponentially on both
 * sides, so the rule is exact to the last digit once the step is fine enough (Takahasi & Mori 1974, Publ. RIMS
 * 9, 721–741); the step is halved until the sum stands still. `f` takes only positive values. `peak` is where
 * weight × f is largest, `curvature` how sharply it falls off there, in ln s.
 *
 * @throws RangeError unless df is above 0
 *
 * @example
 * overChi(5, (s) => s * s) // 1
 */
export function overChi(
  df: number,
  f: (s: number) => number,
  { peak = 1, curvature = 2 * df, steps = 12 }: { peak?: number; curvature?: number; steps?: number } = {},
): number {
  if (!(df > 0)) throw new RangeError('degrees of freedom are above 0')
  if (df === Number.POSITIVE_INFINITY) return f(1)
  const m = df / 2
  const front = Math.LN2 + 0.5 * Math.log(m / (2 * Math.PI)) - stirlingRemainder(m)
  const origin = Math.log(peak)
  let weight = 0
  const term = (u: number) => {
    const fall = Math.expm1(-u)
    const fromPeak = u - omega * fall
    const logS = origin + fromPeak
    const s = peak * Math.exp(fromPeak)
    // 1 + ln s² − s², by its series about ln s = 0
    const shape = Math.abs(logS) < 0.2 ? expLess(2 * logS) : 1 + 2 * logS - s * s
    weight = Math.exp(front + m * shape) * (1 + omega * (1 + fall))
    return weight > 0 ? weight * f(s) : 0
  }

  let step = Math.min(0.25, 0.5 / (1.567 * Math.sqrt(curvature)))
  let sum = term(0)
  const reach = (direction: 1 | -1) => {
    let before = sum
    for (let i = 1; ; i++) {
      const u = direction * i * step
      const here = term(u)
      sum += here
      const spent = here <= 1e-18 * sum && here <= before && sum > 0
      if (spent || !(weight > 0)) return i
      before = here
    }
  }
  const right = reach(1)
  const left = reach(-1)
  // Too small for its digits to be told.
  if (sum * step < 1e-297) return sum * step
  const from = -left * step
  const to = right * step
  let before = 1
  for (let halving = 0; halving < steps; halving++) {
    let between = 0
    for (let u = from + step / 2; u < to; u += step) between += term(u)
    const change = Math.abs(between - sum) / sum
    sum += between
    step /= 2
    // Once the rule has converged, what is left is the rounding of the terms.
    if (change <= 2e-14 || (change < 1e-9 && change >= before / 4)) break
    before = change
  }
  return sum * step
}

/** 1 + x − e^x for small x. */
function expLess(x: number): number {
  let term = (-x * x) / 2
  let sum = term
  for (let k = 3; Math.abs(term) > 1e-17 * Math.abs(sum); k++) {
    term *= x / k
    sum += term
  }
  return sum
}
