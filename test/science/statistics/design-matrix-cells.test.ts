import { expect, test } from 'vitest'
import { cellsOf, emptyCellsOf } from '#api/science/statistics/design-matrix-cells.ts'
import { codedColumn } from '#api/science/statistics/model-columns.ts'

const rows = [
  { a: 'p', b: 1 },
  { a: 'q', b: 1 },
  { a: 'p', b: 1 },
  { a: 'q', b: 2 },
]
const factors = [codedColumn(rows, 'a'), codedColumn(rows, 'b')]

test('rows that agree in every factor are one cell', () => {
  const { of, shown, counts } = cellsOf(4, factors, [])
  expect([...of]).toEqual([0, 1, 0, 2])
  expect([...shown]).toEqual([0, 1, 3])
  expect([...counts]).toEqual([2, 1, 1])
})

test('a covariate tells rows of one cell apart', () => {
  const x = { name: 'x', centre: 0, scale: 1, values: Float64Array.of(1, 1, 2, 1) }
  expect([...cellsOf(4, factors, [x]).of]).toEqual([0, 1, 2, 3])
})

test('without factors all rows are one cell', () => {
  expect([...cellsOf(3, [], []).counts]).toEqual([3])
})

test('combinations without rows are named, and no more of them than asked for', () => {
  expect(emptyCellsOf(factors, 10)).toEqual({ empty: [{ a: 'p', b: '2' }], count: 1 })
  const wide = Array.from({ length: 50 }, (_, i) => ({ c: i, d: i }))
  const { empty, count } = emptyCellsOf([codedColumn(wide, 'c'), codedColumn(wide, 'd')], 3)
  expect(empty).toHaveLength(3)
  expect(count).toBe(50 * 49)
})
