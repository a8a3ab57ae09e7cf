import { expect, test } from 'vitest'
import { factorised } from '#api/science/statistics/least-squares.ts'
import { expectClose } from '#test/support/close-to.ts'

const columns = [
  [1, 1, 1, 1, 1],
  [2, -1, 0.5, 3, 7],
  [4, 1, 0.25, 9, 49],
]
const flat = Float64Array.from(columns.flat())

test('directions times coordinates give every column back', () => {
  const { coordinates, directions, rank } = factorised(flat, 5, 3)
  const q = directions()
  expect(rank).toBe(3)
  columns.forEach((column, j) => {
    column.forEach((value, i) => {
      let sum = 0
      for (let k = 0; k < rank; k++) sum += q[k * 5 + i]! * coordinates[j * rank + k]!
      expectClose(sum, value, 1e-13)
    })
  })
})

test('directions are orthonormal', () => {
  const { directions, rank } = factorised(flat, 5, 3)
  const q = directions()
  for (let a = 0; a < rank; a++)
    for (let b = 0; b < rank; b++) {
      let sum = 0
      for (let i = 0; i < 5; i++) sum += q[a * 5 + i]! * q[b * 5 + i]!
      expect(Math.abs(sum - (a === b ? 1 : 0))).toBeLessThan(1e-14)
    }
})

test('turning a vector there and back leaves it as it was', () => {
  const { turn, turnBack } = factorised(flat, 5, 3)
  const vector = Float64Array.of(3, 1, 4, 1, 5)
  turn(vector)
  turnBack(vector)
  ;[3, 1, 4, 1, 5].forEach((value, i) => {
    expectClose(vector[i], value, 1e-14)
  })
})

test('of two copies the first stays, and the copy has its coordinates', () => {
  const matrix = Float64Array.from([...columns[0]!, ...columns[1]!, ...columns[1]!.map((it) => 2 * it + 1)])
  const { rank, pivot, coordinates } = factorised(matrix, 5, 3)
  expect(rank).toBe(2)
  expect([...pivot]).toEqual([0, 1, 2])
  for (let k = 0; k < 2; k++)
    expectClose(coordinates[2 * 2 + k], 2 * coordinates[2 + k]! + coordinates[k]!, 1e-12)
})

test('a column of nothing is not independent, nor are more columns than rows', () => {
  expect(factorised(new Float64Array(4), 4, 1).rank).toBe(0)
  expect(factorised(Float64Array.of(1, 2, 3, 4, 5, 7), 2, 3).rank).toBe(2)
})
