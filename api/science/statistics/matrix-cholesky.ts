/**
 * The Cholesky factor of a symmetric matrix, written over its lower half (row by row), and the logarithm of its
 * determinant. Nothing comes back when the matrix is not positive definite.
 *
 * @example
 * choleskyInPlace(Float64Array.of(4, 2, 2, 3), 2) // 2.0794
 */
export function choleskyInPlace(matrix: Float64Array, size: number): number | undefined {
  let logDeterminant = 0
  for (let j = 0; j < size; j++) {
    const row = j * size
    let pivot = matrix[row + j]!
    for (let k = 0; k < j; k++) pivot -= matrix[row + k]! ** 2
    if (!(pivot > 0)) return undefined
    const root = Math.sqrt(pivot)
    matrix[row + j] = root
    logDeterminant += 2 * Math.log(root)
    for (let i = j + 1; i < size; i++) {
      const below = i * size
      let sum = matrix[below + j]!
      for (let k = 0; k < j; k++) sum -= matrix[below + k]! * matrix[row + k]!
      matrix[below + j] = sum / root
    }
  }
  return logDeterminant
}

/**
 * The inverse of a symmetric matrix from its Cholesky factor (lower half, row by row).
 *
 * @example
 * Array.from(inverseFromCholesky(Float64Array.of(2, 0, 1, 1.4142135623730951), 2)) // [0.375, -0.25, -0.25, 0.5]
 */
export function inverseFromCholesky(factor: Float64Array, size: number): Float64Array {
  const lower = new Float64Array(size * size)
  for (let j = 0; j < size; j++) {
    lower[j * size + j] = 1 / factor[j * size + j]!
    for (let i = j + 1; i < size; i++) {
      let sum = 0
      for (let k = j; k < i; k++) sum -= factor[i * size + k]! * lower[k * size + j]!
      lower[i * size + j] = sum / factor[i * size + i]!
    }
  }
  const inverse = new Float64Array(size * size)
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0
      for (let k = i; k < size; k++) sum += lower[k * size + i]! * lower[k * size + j]!
      inverse[i * size + j] = sum
      inverse[j * size + i] = sum
    }
  }
  return inverse
}

/**
 * The rank of a Gram matrix (symmetric, no negative eigenvalue), by Cholesky with the largest pivot first. A pivot
 * counts while it is above `tolerance` times the diagonal entry it began with.
 *
 * @example
 * rankOfGram(Float64Array.of(1, 1, 0, 1, 1, 0, 0, 0, 5), 3) // 2
 */
export function rankOfGram(gram: Float64Array, size: number, tolerance = 1e-9): number {
  const a = Float64Array.from(gram)
  const first = Float64Array.from({ length: size }, (_, i) => a[i * size + i]!)
  const open = new Set(Array.from({ length: size }, (_, i) => i))
  let rank = 0
  for (;;) {
    let best = -1
    let most = tolerance
    for (const i of open) {
      const share = first[i]! > 0 ? a[i * size + i]! / first[i]! : 0
      if (share > most) {
        most = share
        best = i
      }
    }
    if (best < 0) return rank
    rank++
    open.delete(best)
    const pivot = a[best * size + best]!
    for (const i of open) {
      const share = a[i * size + best]! / pivot
      if (share === 0) continue
      for (const j of open) a[i * size + j]! -= share * a[best * size + j]!
    }
  }
}
