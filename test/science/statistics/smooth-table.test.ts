import { expect, test } from 'vitest'
import { smoothTable, tailTable } from '#api/science/statistics/smooth-table.ts'
import { expectClose } from '#test/support/close-to.ts'

test('the table gives what the function gives, also where it is steep', () => {
  const steep = (x: number) => 2 + Math.tanh(40 * (x - 0.31))
  const table = smoothTable(steep)
  for (let x = -3; x < 3; x += 0.0171) expectClose(table(x), steep(x), 1e-11)
})

test('each piece is worked out once', () => {
  let asked = 0
  const table = smoothTable((x) => {
    asked++
    return Math.exp(-x)
  })
  table(0.1)
  const once = asked
  table(0.2)
  table(0.49)
  expect(asked).toBe(once)
})

test('beyond its ends a tail is 1 or 0', () => {
  const table = tailTable((w) => Math.exp(-w), { from: 0, to: 10 })
  expect([table(-1), table(10)]).toEqual([1, 0])
})
