/** The groups of one random intercept: the group of each row, and how many there are. */
export type Groups = { readonly name: string; readonly of: Int32Array; readonly count: number }

/** A fixed part in orthonormal directions: the cell of each row, the directions at each cell, the residuals. */
export type FixedPart = {
  readonly rows: number
  readonly rank: number
  readonly cellOf: Int32Array
  /** `rank` numbers a cell, one cell after the other; over the rows these are orthonormal. */
  readonly atCell: Float64Array
  /** What least squares left of each row's response. */
  readonly residuals: Float64Array
}

/**
 * Sums over groups that REML needs, so that no later step goes through the rows. The random intercept with the most
 * groups (`main`) is kept apart: each of its groups only ever enters by its size and its sums. Columns, in this order:
 * the groups of the other random intercepts, the fixed directions, the residuals.
 */
export type RemlSums = {
  readonly groups: readonly Groups[]
  readonly main: number
  readonly rows: number
  readonly rank: number
  /** Where each of the other random intercepts begins and ends among the columns; nothing stands at `main`. */
  readonly spans: readonly (readonly [number, number])[]
  readonly width: number
  readonly total: Float64Array
  /** For each size of a main group: how many there are, and the sum of the squares of their column sums. */
  readonly bySize: readonly {
    readonly size: number
    readonly count: number
    readonly squares: Float64Array
  }[]
}

/** More columns than this beside the main groups would hold up everybody else. */
export const mostBesideMain = 320

/**
 * Gathers the sums.
 *
 * @throws RangeError when the groups beside the largest set, with the fixed columns, are more than 320
 *
 * @example
 * const fixed = { rows: 4, rank: 1, cellOf: [0, 0, 0, 0], atCell: [0.5], residuals: [-2, -1, 1, 2] }
 * const { bySize } = remlSums(fixed, [{ name: 'pot', of: [0, 0, 1, 1], count: 2 }])
 * Array.from(bySize[0].squares) // [2, 0, 0, 18]
 */
export function remlSums(fixed: FixedPart, groups: readonly Groups[]): RemlSums {
  const { rows, rank, cellOf, atCell, residuals } = fixed
  let main = 0
  for (let i = 1; i < groups.length; i++) if (groups[i]!.count > groups[main]!.count) main = i
  let end = 0
  const spans = groups.map((it, i) => {
    const start = end
    if (i !== main) end += it.count
    return [start, end] as const
  })
  const width = end + rank + 1
  if (width > mostBesideMain)
    throw new RangeError(
      `${width - 1} groups and columns beside the largest set of groups are too many to fit here`,
    )
  const total = new Float64Array(width * width)
  const count = groups[main]!.count
  const sums = new Float64Array(count * width)
  const sizes = new Float64Array(count)
  const others = groups.flatMap((it, i) => (i === main ? [] : [{ of: it.of, start: spans[i]![0] }]))
  const last = width - 1
  for (let row = 0; row < rows; row++) {
    const group = groups[main]!.of[row]!
    const at = group * width
    const cell = cellOf[row]! * rank
    const residual = residuals[row]!
    sizes[group]!++
    for (const { of, start } of others) {
      const a = start + of[row]!
      sums[at + a]!++
      for (const other of others) total[a * width + other.start + other.of[row]!]!++
      for (let k = 0; k < rank; k++) total[a * width + end + k]! += atCell[cell + k]!
      total[a * width + last]! += residual
    }
    for (let k = 0; k < rank; k++) sums[at + end + k]! += atCell[cell + k]!
    sums[at + last]! += residual
    total[last * width + last]! += residual * residual
  }
  for (let k = 0; k < rank; k++) total[(end + k) * width + end + k] = 1
  for (let i = 0; i < width; i++) for (let j = 0; j < i; j++) total[i * width + j] = total[j * width + i]!
  const places = new Map<number, { size: number; count: number; squares: Float64Array }>()
  const filled = new Int32Array(width)
  for (let group = 0; group < count; group++) {
    const size = sizes[group]!
    let it = places.get(size)
    if (!it) {
      it = { size, count: 0, squares: new Float64Array(width * width) }
      places.set(size, it)
    }
    it.count++
    let n = 0
    for (let i = 0; i < width; i++) if (sums[group * width + i] !== 0) filled[n++] = i
    for (let a = 0; a < n; a++) {
      const i = filled[a]!
      const value = sums[group * width + i]!
      for (let b = 0; b < n; b++)
        it.squares[i * width + filled[b]!]! += value * sums[group * width + filled[b]!]!
    }
  }
  return { groups, main, rows, rank, spans, width, total, bySize: [...places.values()] }
}
