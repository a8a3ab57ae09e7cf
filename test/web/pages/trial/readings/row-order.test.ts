import { expect, test } from 'vitest'
import { pagesOf, rowOrder, rowsOfPage } from '#web/pages/trial/readings/row-order.ts'

test('a short table keeps its order, whatever is at fault', () => {
  expect(rowOrder(5, [3])).toEqual([0, 1, 2, 3, 4])
})

test('a long table shows first the rows that something is said of, then the rest, each once', () => {
  const order = rowOrder(100_000, [99_999, 7, 7])
  expect(order.slice(0, 4)).toEqual([7, 99_999, 0, 1])
  expect(new Set(order).size).toBe(100_000)
})

test('never more than two hundred rows are shown at once, and every row has its page', () => {
  for (const rows of [1, 200, 201, 350, 1000]) {
    const order = rowOrder(rows, [])
    const pages = Array.from({ length: pagesOf(rows) }, (_, page) => rowsOfPage(order, page))
    expect(Math.max(...pages.map((page) => page.length))).toBeLessThanOrEqual(200)
    expect(pages.flat()).toEqual(order)
  }
})
