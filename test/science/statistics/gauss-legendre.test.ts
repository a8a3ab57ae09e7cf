import { expect, test } from 'vitest'
import { gaussLegendre, integralWithTurns } from '#api/science/statistics/gauss-legendre.ts'
import { expectClose } from '#test/support/close-to.ts'

// Abramowitz & Stegun (1964), table 25.4, n = 5
test('the five nodes and weights of the table', () => {
  const known = [
    [0, 0.568888888888889],
    [0.538469310105683, 0.478628670499366],
    [0.906179845938664, 0.236926885056189],
  ] as const
  for (const [i, [at, weight]] of known.entries()) {
    expect(gaussLegendre(5)[2 + i]?.at).toBeCloseTo(at, 14)
    expect(gaussLegendre(5)[2 + i]?.weight).toBeCloseTo(weight, 14)
  }
})

test('sixteen nodes integrate a polynomial of degree 31 exactly', () => {
  const sum = gaussLegendre(16).reduce((total, { at, weight }) => total + weight * (at ** 30 + at ** 31), 0)
  expectClose(sum, 2 / 31, 1e-13)
})

test('a step as steep as a wall is seen when it is told of', () => {
  const step = (z: number) => 1 / (1 + Math.exp(-(z - 1.3) / 1e-4))
  const turns = [{ at: 1.3, reach: 5e-3, fine: 5e-4 }]
  expectClose(integralWithTurns(step, { from: 0, to: 3, coarse: 1, turns }), 1.7, 1e-12)
})

test('no nodes are refused', () => {
  expect(() => gaussLegendre(0)).toThrow(RangeError)
})
