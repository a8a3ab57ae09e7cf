import type { Covariate } from './design-matrix.ts'
import type { Coded } from './model-columns.ts'

/** Rows that look alike to the fixed part of a model: which cell each row is in, and one row that shows each cell. */
export type Cells = { readonly of: Int32Array; readonly shown: Int32Array; readonly counts: Float64Array }

/**
 * Puts rows that agree in every factor and covariate together. Least squares needs no more of them than their count
 * and mean, so that 20,000 rows of twelve treatments are twelve rows.
 *
 * @example
 * const steam = { name: 'steam', levels: ['10', '20'], codes: Int32Array.of(0, 1, 0) }
 * Array.from(cellsOf(3, [steam], []).counts) // [2, 1]
 */
export function cellsOf(rows: number, factors: readonly Coded[], covariates: readonly Covariate[]): Cells {
  let of = new Int32Array(rows)
  let count = 1
  for (const factor of factors) ({ of, count } = crossed(of, count, factor.codes, factor.levels.length))
  for (const { values } of covariates) {
    const places = new Map<number, number>()
    const codes = Int32Array.from(values, (value) => {
      const met = places.get(value)
      if (met !== undefined) return met
      places.set(value, places.size)
      return places.size - 1
    })
    ;({ of, count } = crossed(of, count, codes, places.size))
  }
  const shown = new Int32Array(count).fill(-1)
  const counts = new Float64Array(count)
  for (let i = 0; i < rows; i++) {
    const cell = of[i]!
    if (shown[cell] === -1) shown[cell] = i
    counts[cell]!++
  }
  return { of, shown, counts }
}

function crossed(
  a: Int32Array,
  countA: number,
  b: Int32Array,
  countB: number,
): { of: Int32Array<ArrayBuffer>; count: number } {
  const of = new Int32Array(a.length)
  const dense = countA * countB <= 4 * a.length + 64
  const places = dense ? new Int32Array(countA * countB).fill(-1) : new Map<number, number>()
  let count = 0
  for (let i = 0; i < a.length; i++) {
    const key = a[i]! * countB + b[i]!
    let place = places instanceof Map ? (places.get(key) ?? -1) : places[key]!
    if (place < 0) {
      place = count++
      if (places instanceof Map) places.set(key, place)
      else places[key] = place
    }
    of[i] = place
  }
  return { of, count }
}

/**
 * Combinations of the factors' levels of which there is no row, up to `most` of them, and how many there are.
 * The first factor runs fastest.
 *
 * @example
 * const a = { name: 'a', levels: ['p', 'q'], codes: Int32Array.of(0, 1, 1) }
 * const b = { name: 'b', levels: ['r', 's'], codes: Int32Array.of(0, 0, 1) }
 * emptyCellsOf([a, b], 10) // { empty: [{ a: 'p', b: 's' }], count: 1 }
 */
export function emptyCellsOf(
  factors: readonly Coded[],
  most: number,
): { readonly empty: Record<string, string>[]; readonly count: number } {
  const sizes = factors.map((it) => it.levels.length)
  const all = sizes.reduce((product, size) => product * size, 1)
  const filled = new Set<number>()
  const rows = factors[0]?.codes.length ?? 0
  for (let i = 0; i < rows; i++) {
    let key = 0
    for (let f = factors.length - 1; f >= 0; f--) key = key * sizes[f]! + factors[f]!.codes[i]!
    filled.add(key)
  }
  const empty: Record<string, string>[] = []
  for (let key = 0; key < all && empty.length < most && empty.length < all - filled.size; key++) {
    if (filled.has(key)) continue
    let rest = key
    const cell: Record<string, string> = {}
    factors.forEach((factor, f) => {
      cell[factor.name] = factor.levels[rest % sizes[f]!]!
      rest = Math.floor(rest / sizes[f]!)
    })
    empty.push(cell)
  }
  return { empty, count: all - filled.size }
}
