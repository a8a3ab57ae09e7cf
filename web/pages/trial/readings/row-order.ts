/** As many rows as are shown as fields at once; more are paged through. */
export const rowsAtOnce = 100
const allAtOnce = 200

/** The order in which rows are shown: as they came, or in a long table those first that something is said of. */
export function rowOrder(rows: number, marked: Iterable<number>): readonly number[] {
  const all = Array.from({ length: rows }, (_, row) => row)
  if (rows <= allAtOnce) return all
  const first = [...new Set(marked)].sort((a, b) => a - b)
  const led = new Set(first)
  return [...first, ...all.filter((row) => !led.has(row))]
}

/** The rows of one page, from 0. All of them where they are few. */
export function rowsOfPage(order: readonly number[], page: number): readonly number[] {
  if (order.length <= allAtOnce) return order
  return order.slice(page * rowsAtOnce, (page + 1) * rowsAtOnce)
}

/**
 * How many pages there are.
 *
 * @example
 * [pagesOf(24), pagesOf(201), pagesOf(100000)] // [1, 3, 1000]
 */
export function pagesOf(rows: number): number {
  return rows <= allAtOnce ? 1 : Math.ceil(rows / rowsAtOnce)
}
