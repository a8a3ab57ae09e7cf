import { expect, test } from 'vitest'
import { choleskyInPlace, inverseFromCholesky } from '#api/science/statistics/matrix-cholesky.ts'
import { remlFit } from '#api/science/statistics/reml.ts'
import { remlEquations } from '#api/science/statistics/reml-equations.ts'
import { remlSlopes } from '#api/science/statistics/reml-slopes.ts'
import { type Groups, remlSums } from '#api/science/statistics/reml-sums.ts'
import { expectClose } from '#test/support/close-to.ts'

// Unbalanced, three random intercepts (one nested, one crossed), a fixed mean and a fixed slope. Beside it the same by the
// full matrices V and P of Searle, Casella and McCulloch (1992), section 6.6, without any elimination.
const rows = 23
const values = Float64Array.from({ length: rows }, (_, i) => Math.sin(3 * i) + (i % 5) * 0.7 + (i % 3) * 0.4)
const of = (group: (row: number) => number) => {
  const met = new Map<number, number>()
  const codes = Int32Array.from({ length: rows }, (_, i) => {
    const key = group(i)
    if (!met.has(key)) met.set(key, met.size)
    return met.get(key)!
  })
  return { codes, count: met.size }
}
const named = (name: string, group: (row: number) => number): Groups => {
  const { codes, count } = of(group)
  return { name, of: codes, count }
}
const groups = [
  named('session', (i) => i % 5),
  named('vessel', (i) => (i % 5) * 10 + (i % 2)),
  named('operator', (i) => Math.floor(i / 8)),
]

const x = Float64Array.from({ length: rows }, (_, i) => i - 11)
const length = Math.sqrt(x.reduce((sum, it) => sum + it * it, 0))
const directions = [new Float64Array(rows).fill(1 / Math.sqrt(rows)), x.map((it) => it / length)]
const project = (y: Float64Array) => {
  const left = Float64Array.from(y)
  for (const q of directions) {
    const along = q.reduce((sum, it, i) => sum + it * y[i]!, 0)
    for (let i = 0; i < rows; i++) left[i]! -= along * q[i]!
  }
  return left
}
const fixed = {
  rows,
  rank: 2,
  cellOf: Int32Array.from({ length: rows }, (_, i) => i),
  atCell: Float64Array.from({ length: rows * 2 }, (_, i) => directions[i % 2]![Math.floor(i / 2)]!),
  residuals: project(values),
}
const sums = remlSums(fixed, groups)

function inFull(ratios: readonly number[]) {
  const v = new Float64Array(rows * rows)
  for (let a = 0; a < rows; a++)
    for (let b = 0; b < rows; b++) {
      v[a * rows + b] = a === b ? 1 : 0
      groups.forEach((it, k) => {
        if (it.of[a] === it.of[b]) v[a * rows + b]! += ratios[k]!
      })
    }
  const factor = Float64Array.from(v)
  const logV = choleskyInPlace(factor, rows)!
  const inverse = inverseFromCholesky(factor, rows)
  const w = directions.map((q) =>
    q.map((_, a) => q.reduce((sum, it, b) => sum + inverse[a * rows + b]! * it, 0)),
  )
  const small = Float64Array.from({ length: 4 }, (_, i) =>
    directions[Math.floor(i / 2)]!.reduce((sum, it, a) => sum + it * w[i % 2]![a]!, 0),
  )
  const smallFactor = Float64Array.from(small)
  const logX = choleskyInPlace(smallFactor, 2)!
  const c = inverseFromCholesky(smallFactor, 2)
  const p = Float64Array.from({ length: rows * rows }, (_, i) => {
    const a = Math.floor(i / rows)
    const b = i % rows
    let value = inverse[i]!
    for (let k = 0; k < 2; k++) for (let l = 0; l < 2; l++) value -= w[k]![a]! * c[k * 2 + l]! * w[l]![b]!
    return value
  })
  const py = values.map((_, a) => values.reduce((sum, it, b) => sum + p[a * rows + b]! * it, 0))
  const squares = values.reduce((sum, it, a) => sum + it * py[a]!, 0)
  return { deviance: logV + logX + (rows - 2) * Math.log(squares), p, py, squares }
}

const together = (k: number, a: number, b: number) => (groups[k]!.of[a] === groups[k]!.of[b] ? 1 : 0)

test.each([[[0.3, 1.2, 0.05]], [[0, 0.7, 2]], [[5, 0, 0]], [[0.01, 30, 0.4]]])(
  'at ratios %j all sums agree with the full matrices',
  (ratios) => {
    const equations = remlEquations(sums, ratios)
    if (!equations) throw new Error('no equations')
    const full = inFull(ratios)
    expectClose(equations.deviance, full.deviance, 1e-11)
    expectClose(equations.squares, full.squares, 1e-10)
    const { slope, traces, linear, quadratic } = remlSlopes(equations)
    const cells = Array.from({ length: rows }, (_, i) => i)
    for (let i = 0; i < 3; i++) {
      // V_i P and V_i P y
      const vp = cells.map((a) =>
        cells.map((b) => cells.reduce((sum, m) => sum + together(i, a, m) * full.p[m * rows + b]!, 0)),
      )
      const vpy = cells.map((a) => cells.reduce((sum, m) => sum + together(i, a, m) * full.py[m]!, 0))
      const trace = cells.reduce((sum, a) => sum + vp[a]![a]!, 0)
      const form = cells.reduce((sum, a) => sum + full.py[a]! * vpy[a]!, 0)
      expectClose(linear[i], form, 1e-9)
      expectClose(slope[i], trace - ((rows - 2) * form) / full.squares, 1e-8)
      for (let k = 0; k < 3; k++) {
        const wp = cells.map((a) =>
          cells.map((b) => cells.reduce((sum, m) => sum + together(k, a, m) * full.p[m * rows + b]!, 0)),
        )
        const wpy = cells.map((a) => cells.reduce((sum, m) => sum + together(k, a, m) * full.py[m]!, 0))
        let both = 0
        let bend = 0
        for (const a of cells)
          for (const b of cells) {
            both += vp[a]![b]! * wp[b]![a]!
            bend += vpy[a]! * full.p[a * rows + b]! * wpy[b]!
          }
        expectClose(traces[i * 3 + k], both, 1e-9)
        expectClose(quadratic[i * 3 + k], bend, 1e-8)
      }
    }
  },
)

test('where REML settles no ratio nearby has a smaller deviance', () => {
  const fit = remlFit(sums)
  if ('unavailable' in fit) throw new Error(fit.unavailable)
  const there = inFull(fit.ratios).deviance
  fit.ratios.forEach((ratio, i) => {
    for (const near of ratio > 0 ? [ratio * 0.98, ratio * 1.02] : [0.001, 0.05])
      expect(inFull(fit.ratios.with(i, near)).deviance).toBeGreaterThan(there)
  })
})

test('too many groups beside the largest set are refused before any work', () => {
  const many = (count: number): Groups => ({ name: 'g', of: new Int32Array(rows), count })
  expect(() => remlSums(fixed, [many(500), many(400)])).toThrow(/too many to fit here/)
})
