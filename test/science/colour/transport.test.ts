import fc from 'fast-check'
import { expect, test } from 'vitest'
import { transport } from '#api/science/colour/transport.ts'

// A plan is the cheapest exactly when prices exist that no road undercuts and every used road meets
// (the dual of the linear programme): found here by Bellman and Ford over the roads and the used roads back.
function isCheapest(n: number, m: number, cost: number[][], flows: ReturnType<typeof transport>): boolean {
  const price = new Array<number>(n + m).fill(0)
  for (let round = 0; round <= n + m; round++) {
    let changed = false
    const relax = (from: number, to: number, along: number) => {
      if (price[from]! + along < price[to]! - 1e-9) {
        price[to] = price[from]! + along
        changed = true
      }
    }
    for (let i = 0; i < n; i++) for (let j = 0; j < m; j++) relax(i, n + j, cost[i]![j]!)
    for (const { from, to } of flows) relax(n + to, from, -cost[from]![to]!)
    if (!changed) return true
  }
  return false
}

test('no cheaper plan exists, for any goods and any roads', () => {
  const amounts = fc.array(fc.integer({ min: 0, max: 20 }), { minLength: 1, maxLength: 7 })
  fc.assert(
    fc.property(
      amounts,
      amounts,
      fc.infiniteStream(fc.integer({ min: 0, max: 30 })),
      (supply, rest, costs) => {
        const total = supply.reduce((sum, amount) => sum + amount, 0)
        const wanted = rest.reduce((sum, amount) => sum + amount, 0)
        fc.pre(total > 0 && wanted > 0)
        const demand = rest.map((amount) => (amount * total) / wanted)
        const table = supply.map(() => demand.map(() => costs.next().value as number))
        const flows = transport(supply, demand, (from, to) => table[from]![to]!)
        expect(flows.reduce((sum, { amount }) => sum + amount, 0)).toBeCloseTo(total, 6)
        expect(isCheapest(supply.length, demand.length, table, flows)).toBe(true)
      },
    ),
    { numRuns: 500 },
  )
})

// Small enough to see: the near road is taken away from the first so that the second need not go the far one.
test('an earlier flow is sent another way when that makes the whole cheaper', () => {
  const cost = [
    [1, 2],
    [1, 10],
  ]
  expect(transport([1, 1], [1, 1], (from, to) => cost[from]![to]!)).toEqual([
    { from: 0, to: 1, amount: 1 },
    { from: 1, to: 0, amount: 1 },
  ])
})

test('a hundred places to a hundred places', () => {
  const places = Array.from({ length: 100 }, (_, i) => i)
  const one = places.map(() => 0.01)
  const flows = transport(one, one, (from, to) => Math.abs(from - ((to * 37) % 100)))
  // 37 and 100 have no common factor: every place has its partner at no cost.
  expect(
    flows.reduce((sum, { from, to, amount }) => sum + amount * Math.abs(from - ((to * 37) % 100)), 0),
  ).toBe(0)
  expect(flows).toHaveLength(100)
})

test.each([
  ['more wanted than there is', [1], [2], 1],
  ['a negative amount', [2, -1], [1], 1],
  ['an amount that is no number', [Number.NaN], [1], 1],
  ['a negative cost', [1], [1], -1],
  ['a cost that is no number', [1], [1], Number.NaN],
])('%s is refused', (_name, supply, demand, cost) => {
  expect(() => transport(supply, demand, () => cost)).toThrow(RangeError)
})
