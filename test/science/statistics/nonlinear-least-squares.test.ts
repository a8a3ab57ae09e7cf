import { expect, test } from 'vitest'
import { nonlinearLeastSquares } from '#api/science/statistics/nonlinear-least-squares.ts'
import BoxBOD from '#test/reference/stats/nist/BoxBOD.json' with { type: 'json' }
import Chwirut2 from '#test/reference/stats/nist/Chwirut2.json' with { type: 'json' }
import Misra1a from '#test/reference/stats/nist/Misra1a.json' with { type: 'json' }
import { expectClose } from '#test/support/close-to.ts'

/** The value of a model at x, then its slope by each parameter. */
type Model = (parameters: readonly number[], x: number) => number[]

const rising: Model = ([b1 = 0, b2 = 0], x) => [
  b1 * -Math.expm1(-b2 * x),
  -Math.expm1(-b2 * x),
  b1 * x * Math.exp(-b2 * x),
]
const echo: Model = ([b1 = 0, b2 = 0, b3 = 0], x) => {
  const top = Math.exp(-b1 * x)
  const bottom = b2 + b3 * x
  return [top / bottom, (-x * top) / bottom, -top / bottom ** 2, (-x * top) / bottom ** 2]
}

function fitOf({ data }: typeof Misra1a, model: Model, start: readonly number[]) {
  return nonlinearLeastSquares((parameters) => {
    const rows = data.x.map((x) => model(parameters, x))
    return {
      residuals: rows.map(([value = 0], i) => data.y[i]! - value),
      slopes: rows.map(([, ...slopes]) => slopes),
    }
  }, start)
}

// NIST Statistical Reference Datasets, certified values, from both of its starts. From the far start of BoxBOD the
// search runs away, as NIST warns; it must then not claim to have converged.
test.each([
  ['Misra1a', Misra1a, rising, 'start1'],
  ['Misra1a', Misra1a, rising, 'start2'],
  ['BoxBOD', BoxBOD, rising, 'start2'],
  ['Chwirut2', Chwirut2, echo, 'start1'],
  ['Chwirut2', Chwirut2, echo, 'start2'],
] as const)('%s, from its %s', (_, set, model, start) => {
  const found = fitOf(
    set,
    model,
    set.parameters.map((parameter) => parameter[start]),
  )
  expect(found.converged).toBe(true)
  expectClose(found.squares, set.certified.residualSumOfSquares.value, 1e-9)
  for (const [i, { estimate, standardDeviation }] of set.parameters.entries()) {
    expectClose(found.parameters[i], estimate.value, 1e-9)
    const variance = (found.squares / set.certified.df) * found.inverse[i]![i]!
    expectClose(Math.sqrt(variance), standardDeviation.value, 1e-9)
  }
})

test('a search that runs away does not say that it came to rest', () => {
  expect(fitOf(BoxBOD, rising, [1, 1]).converged).toBe(false)
})

test('more parameters than points are refused', () => {
  expect(() => nonlinearLeastSquares(() => ({ residuals: [1], slopes: [[1, 2]] }), [0, 0])).toThrow(
    RangeError,
  )
})
