import { expect, test } from 'vitest'
import { eigenOfSymmetric } from '#api/science/statistics/matrix-eigen.ts'
import { expectClose } from '#test/support/close-to.ts'

// The second-difference matrix of order n has eigenvalues 2 − 2 cos(kπ / (n + 1)) (Golub and Van Loan, section 4.8)
test('the second-difference matrix has its known eigenvalues', () => {
  const size = 6
  const matrix = Float64Array.from({ length: size * size }, (_, i) => {
    const apart = Math.abs(Math.floor(i / size) - (i % size))
    return apart === 0 ? 2 : apart === 1 ? -1 : 0
  })
  const { values, vectors } = eigenOfSymmetric(matrix, size)
  const sorted = [...values].sort((a, b) => a - b)
  sorted.forEach((value, k) => {
    expectClose(value, 2 - 2 * Math.cos(((k + 1) * Math.PI) / (size + 1)), 1e-13)
  })
  for (let column = 0; column < size; column++)
    for (let row = 0; row < size; row++) {
      let image = 0
      for (let k = 0; k < size; k++) image += matrix[row * size + k]! * vectors[k * size + column]!
      expect(Math.abs(image - values[column]! * vectors[row * size + column]!)).toBeLessThan(1e-13)
    }
})
