import { expect, test } from 'vitest'
import { choleskyInPlace, inverseFromCholesky, rankOfGram } from '#api/science/statistics/matrix-cholesky.ts'
import { expectClose } from '#test/support/close-to.ts'

// The Hilbert matrix of order 4: determinant 1/6048000 and a whole-number inverse (Choi 1983, Am. Math. Monthly 90, 301–312)
const hilbert = Float64Array.from({ length: 16 }, (_, i) => 1 / (Math.floor(i / 4) + (i % 4) + 1))
const inverse = [
  16, -120, 240, -140, -120, 1200, -2700, 1680, 240, -2700, 6480, -4200, -140, 1680, -4200, 2800,
]

test('the Hilbert matrix has its known determinant and inverse', () => {
  const factor = Float64Array.from(hilbert)
  expectClose(choleskyInPlace(factor, 4), -Math.log(6048000), 1e-11)
  inverseFromCholesky(factor, 4).forEach((value, i) => {
    expectClose(value, inverse[i]!, 1e-9)
  })
})

test('a matrix that is not positive definite has no factor', () => {
  expect(choleskyInPlace(Float64Array.of(1, 2, 2, 1), 2)).toBeUndefined()
  expect(choleskyInPlace(Float64Array.of(Number.NaN), 1)).toBeUndefined()
})

test('the rank of a Gram matrix counts independent columns', () => {
  // Columns (1,1,0), (0,1,1) and their sum.
  expect(rankOfGram(Float64Array.of(2, 1, 3, 1, 2, 3, 3, 3, 6), 3)).toBe(2)
  expect(rankOfGram(new Float64Array(4), 2)).toBe(0)
  expect(rankOfGram(Float64Array.of(1e-20, 0, 0, 1e20), 2)).toBe(2)
})
