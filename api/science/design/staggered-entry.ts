/** When each goes in, counted from the first, and when all come out. */
export type StaggeredEntry = {
  /** Longest first; those of no time at all stay out. */
  readonly entries: readonly { readonly stays: number; readonly inAt: number }[]
  readonly allOutAt: number
}

/**
 * A ladder of times as it is worked in one pot: the longest goes in first, the shorter ones follow, and all come out
 * together, so that the lid is opened for going in only and all cool alike. The times follow from the levels; only
 * skein and place are drawn. Common practice of the trade.
 *
 * @param times  How long each level stays in, in one unit; 0 is never put in.
 * @throws RangeError for a time below 0 or not a number
 *
 * @example
 * staggeredEntry([0, 20, 50, 75]) // { entries: [{ stays: 75, inAt: 0 }, { stays: 50, inAt: 25 }, { stays: 20, inAt: 55 }], allOutAt: 75 }
 */
export function staggeredEntry(times: readonly number[]): StaggeredEntry {
  if (times.some((time) => !(time >= 0 && Number.isFinite(time))))
    throw new RangeError('A time is a number of 0 or more.')
  const longest = Math.max(0, ...times)
  const entries = [...new Set(times)]
    .filter((time) => time > 0)
    .sort((a, b) => b - a)
    .map((stays) => ({ stays, inAt: longest - stays }))
  return { entries, allOutAt: longest }
}
