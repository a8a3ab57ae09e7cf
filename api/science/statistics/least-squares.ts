/** A matrix column after column, taken apart into orthogonal directions (Q) and their coordinates (R). */
export type Factored = {
  readonly rows: number
  readonly columns: number
  /** How many columns are independent. */
  readonly rank: number
  /** The columns in the order in which they were taken; the first `rank` are independent, the rest follow from them. */
  readonly pivot: Int32Array
  /** Coordinates of every original column in the `rank` directions, column after column. */
  readonly coordinates: Float64Array
  /** Turns a vector of `rows` numbers in place: its first `rank` numbers are then its coordinates. */
  readonly turn: (vector: Float64Array) => void
  /** Turns a vector back in place. */
  readonly turnBack: (vector: Float64Array) => void
  /** The directions themselves, column after column, `rows` numbers each. */
  readonly directions: () => Float64Array
}

/**
 * Householder QR with the columns taken in their order. A column of which less than `tolerance` is left beside those
 * before it says nothing new: it goes to the end and does not count towards the rank. So the first of two copies is
 * the one that stays.
 *
 * Source: Golub and Van Loan, Matrix Computations, section 5.2.2; the limited exchange of columns is ours.
 *
 * @example
 * factorised(Float64Array.of(1, 1, 1, 0, 1, 2, 2, 2, 2), 3, 3).rank // 2
 */
export function factorised(matrix: Float64Array, rows: number, columns: number, tolerance = 1e-9): Factored {
  const a = Float64Array.from(matrix)
  const scale = new Float64Array(Math.min(rows, columns))
  const pivot: number[] = []
  const aside: number[] = []
  for (let column = 0; column < columns; column++) {
    const rank = pivot.length
    const whole = norm(a, column * rows, (column + 1) * rows)
    for (let k = 0; k < rank; k++) reflect(a, pivot[k]! * rows, k, scale[k]!, a, column * rows, rows)
    const left = rank < rows ? norm(a, column * rows + rank, (column + 1) * rows) : 0
    if (!(left > tolerance * whole)) {
      aside.push(column)
      continue
    }
    const at = column * rows + rank
    const head = a[at]!
    const turned = head > 0 ? -left : left
    // The reflecting vector is scaled so that its head is 1 and need not be kept: R takes its place.
    const first = head - turned
    for (let i = at + 1; i < (column + 1) * rows; i++) a[i]! /= first
    a[at] = turned
    scale[rank] = -first / turned
    pivot.push(column)
  }
  const rank = pivot.length
  const coordinates = new Float64Array(columns * rank)
  for (let k = 0; k < rank; k++)
    for (let i = 0; i <= k; i++) coordinates[pivot[k]! * rank + i] = a[pivot[k]! * rows + i]!
  for (const column of aside) {
    const rest = matrix.slice(column * rows, (column + 1) * rows)
    for (let k = 0; k < rank; k++) reflect(a, pivot[k]! * rows, k, scale[k]!, rest, 0, rows)
    for (let i = 0; i < rank; i++) coordinates[column * rank + i] = rest[i]!
  }
  return {
    rows,
    columns,
    rank,
    pivot: Int32Array.from([...pivot, ...aside]),
    coordinates,
    turn: (vector) => {
      for (let k = 0; k < rank; k++) reflect(a, pivot[k]! * rows, k, scale[k]!, vector, 0, rows)
    },
    turnBack: (vector) => {
      for (let k = rank - 1; k >= 0; k--) reflect(a, pivot[k]! * rows, k, scale[k]!, vector, 0, rows)
    },
    directions: () => {
      const q = new Float64Array(rows * rank)
      for (let j = 0; j < rank; j++) {
        q[j * rows + j] = 1
        for (let k = Math.min(j, rank - 1); k >= 0; k--)
          reflect(a, pivot[k]! * rows, k, scale[k]!, q, j * rows, rows)
      }
      return q
    },
  }
}

function reflect(
  from: Float64Array,
  fromStart: number,
  k: number,
  scale: number,
  to: Float64Array,
  toStart: number,
  rows: number,
): void {
  let sum = to[toStart + k]!
  for (let i = k + 1; i < rows; i++) sum += from[fromStart + i]! * to[toStart + i]!
  if (sum === 0) return
  sum *= scale
  to[toStart + k]! -= sum
  for (let i = k + 1; i < rows; i++) to[toStart + i]! -= sum * from[fromStart + i]!
}

function norm(a: Float64Array, start: number, end: number): number {
  let largest = 0
  for (let i = start; i < end; i++) {
    const size = Math.abs(a[i]!)
    if (size > largest) largest = size
  }
  if (largest === 0) return 0
  let sum = 0
  for (let i = start; i < end; i++) sum += (a[i]! / largest) ** 2
  return largest * Math.sqrt(sum)
}
