/**
 * Which column each row takes, each column once, so that the costs together are least. Among equal costs the earlier
 * column is taken: shuffle before, and it is by lot.
 *
 * The Hungarian method with potentials, row by row (Kuhn 1955, Naval Res. Logist. Q. 2, 83–97; Munkres 1957).
 *
 * @param costs  As many columns as rows.
 * @throws RangeError when a row has not as many columns as there are rows.
 *
 * @example
 * cheapestMatching([[4, 1, 3], [2, 0, 5], [3, 2, 2]]) // [1, 0, 2]
 */
export function cheapestMatching(costs: readonly (readonly number[])[]): number[] {
  const n = costs.length
  if (costs.some((row) => row.length !== n)) throw new RangeError('Costs have as many columns as rows.')
  const ofRow = new Float64Array(n + 1)
  const ofColumn = new Float64Array(n + 1)
  /** The row of each column, both from 1; 0 is none. */
  const taken = new Int32Array(n + 1)
  for (let row = 1; row <= n; row++) {
    const least = new Float64Array(n + 1).fill(Number.POSITIVE_INFINITY)
    const from = new Int32Array(n + 1)
    const seen = new Uint8Array(n + 1)
    taken[0] = row
    let column = 0
    do {
      seen[column] = 1
      const at = taken[column] ?? 0
      let step = Number.POSITIVE_INFINITY
      let next = 0
      for (let other = 1; other <= n; other++) {
        if (seen[other]) continue
        const cost = (costs[at - 1]?.[other - 1] ?? 0) - (ofRow[at] ?? 0) - (ofColumn[other] ?? 0)
        if (cost < (least[other] ?? 0)) {
          least[other] = cost
          from[other] = column
        }
        if ((least[other] ?? 0) < step) {
          step = least[other] ?? 0
          next = other
        }
      }
      for (let other = 0; other <= n; other++) {
        if (seen[other]) {
          const own = taken[other] ?? 0
          ofRow[own] = (ofRow[own] ?? 0) + step
          ofColumn[other] = (ofColumn[other] ?? 0) - step
        } else least[other] = (least[other] ?? 0) - step
      }
      column = next
    } while (taken[column] !== 0)
    while (column !== 0) {
      const back = from[column] ?? 0
      taken[column] = taken[back] ?? 0
      column = back
    }
  }
  const columnOf = Array.from({ length: n }, () => 0)
  for (let column = 1; column <= n; column++) columnOf[(taken[column] ?? 1) - 1] = column - 1
  return columnOf
}
