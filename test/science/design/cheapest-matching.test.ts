import fc from 'fast-check'
import { expect, test } from 'vitest'
import { cheapestMatching } from '#api/science/design/cheapest-matching.ts'

function orders(n: number): number[][] {
  if (n === 0) return [[]]
  return orders(n - 1).flatMap((order) =>
    Array.from({ length: n }, (_, at) => [...order.slice(0, at), n - 1, ...order.slice(at)]),
  )
}

test('it costs as little as the cheapest of all ways, counted out', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 6 }).chain((n) =>
        fc.array(fc.array(fc.integer({ min: 0, max: 4 }), { minLength: n, maxLength: n }), {
          minLength: n,
          maxLength: n,
        }),
      ),
      (costs) => {
        const total = (way: readonly number[]) =>
          way.reduce((sum, column, row) => sum + (costs[row]?.[column] ?? 0), 0)
        const way = cheapestMatching(costs)
        expect(way.toSorted((a, b) => a - b)).toEqual(costs.map((_, i) => i))
        expect(total(way)).toBe(Math.min(...orders(costs.length).map(total)))
      },
    ),
  )
})

test('where all costs are alike, row and column go in step', () => {
  expect(
    cheapestMatching([
      [1, 1, 1],
      [1, 1, 1],
      [1, 1, 1],
    ]),
  ).toEqual([0, 1, 2])
})

test('costs that are not square are refused', () => {
  expect(() => cheapestMatching([[1, 2]])).toThrow(RangeError)
})
