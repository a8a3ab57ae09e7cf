import type { RemlFit } from './reml.ts'
import type { FixedPart } from './reml-sums.ts'

/**
 * What a mixed model leaves of each row, in the scale of the residuals that were given: less the fixed effects and less
 * what is predicted of the row's groups (best linear unbiased prediction).
 *
 * Source: Searle, Casella and McCulloch (1992), Variance Components, section 7.6.
 *
 * @example
 * const sums = { groups: [{ of: [0, 0, 1, 1], count: 2 }], main: 0, rank: 1, spans: [[0, 0]], width: 2 }
 * const at = { inverse: [18], m: [1 / 18, 0, 0, 1.5] }
 * const fixed = { rows: 4, rank: 1, cellOf: [0, 0, 0, 0], atCell: [0.5], residuals: Float64Array.of(-2, -1, 1, 2) }
 * Array.from(remlResiduals({ sums, at, ratios: [8.5] }, fixed)) // [-0.583, 0.417, -0.417, 0.583]
 */
export function remlResiduals({ sums, at, ratios }: RemlFit, fixed: FixedPart): Float64Array {
  const { groups, main, spans, width, rank } = sums
  const small = width - 1
  const others = small - rank
  const solution = new Float64Array(small)
  for (let a = 0; a < small; a++)
    for (let b = 0; b < small; b++) solution[a]! += at.inverse[a * small + b]! * at.m[b * width + small]!
  const left = fixed.residuals.map((residual, row) => {
    let value = residual
    for (let k = 0; k < rank; k++)
      value -= fixed.atCell[fixed.cellOf[row]! * rank + k]! * solution[others + k]!
    groups.forEach(({ of }, i) => {
      if (i !== main) value -= solution[spans[i]![0] + of[row]!]!
    })
    return value
  })
  const { of, count } = groups[main]!
  const totals = new Float64Array(count)
  const sizes = new Float64Array(count)
  left.forEach((value, row) => {
    totals[of[row]!]! += value
    sizes[of[row]!]!++
  })
  const ratio = ratios[main]!
  return left.map((value, row) => {
    const group = of[row]!
    return value - (ratio * totals[group]!) / (1 + ratio * sizes[group]!)
  })
}
