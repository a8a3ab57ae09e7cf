/**
 * Eigenvalues and eigenvectors of a small symmetric matrix (row by row), by cyclic Jacobi rotations: slow for large
 * matrices, exact to the last digits for small ones. `vectors` holds one eigenvector a column, row by row.
 *
 * Source: Golub and Van Loan, Matrix Computations, section 8.5 (the cyclic Jacobi method).
 *
 * @example
 * Array.from(eigenOfSymmetric(Float64Array.of(2, 0, 0, 5), 2).values) // [2, 5]
 */
export function eigenOfSymmetric(
  matrix: Float64Array,
  size: number,
): { readonly values: Float64Array; readonly vectors: Float64Array } {
  const a = Float64Array.from(matrix)
  const vectors = new Float64Array(size * size)
  for (let i = 0; i < size; i++) vectors[i * size + i] = 1
  for (let sweep = 0; sweep < 60; sweep++) {
    let off = 0
    let on = 0
    for (let i = 0; i < size; i++) {
      on += a[i * size + i]! ** 2
      for (let j = i + 1; j < size; j++) off += a[i * size + j]! ** 2
    }
    if (off <= 1e-32 * (on + off)) break
    for (let p = 0; p < size; p++) for (let q = p + 1; q < size; q++) rotate(a, vectors, size, p, q)
  }
  return { values: Float64Array.from({ length: size }, (_, i) => a[i * size + i]!), vectors }
}

function rotate(a: Float64Array, vectors: Float64Array, size: number, p: number, q: number): void {
  const apq = a[p * size + q]!
  if (apq === 0) return
  const theta = (a[q * size + q]! - a[p * size + p]!) / (2 * apq)
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1))
  const c = 1 / Math.hypot(t, 1)
  const s = t * c
  for (let k = 0; k < size; k++) {
    const kp = a[k * size + p]!
    const kq = a[k * size + q]!
    a[k * size + p] = c * kp - s * kq
    a[k * size + q] = s * kp + c * kq
  }
  for (let k = 0; k < size; k++) {
    const pk = a[p * size + k]!
    const qk = a[q * size + k]!
    a[p * size + k] = c * pk - s * qk
    a[q * size + k] = s * pk + c * qk
    const vp = vectors[k * size + p]!
    const vq = vectors[k * size + q]!
    vectors[k * size + p] = c * vp - s * vq
    vectors[k * size + q] = s * vp + c * vq
  }
}
