const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
]

/**
 * A day as a sentence says it. Of a moment, the day by the server’s clock (UTC), so that a sheet says the same wherever
 * it is read.
 *
 * @example
 * [day('2026-03-04'), day(new Date('2026-02-24T09:12:30Z'))] // ['4 March 2026', '24 February 2026']
 */
export function day(at: Date | string): string {
  const [year = '', month = '', date = ''] = (typeof at === 'string' ? at : at.toISOString())
    .slice(0, 10)
    .split('-')
  return `${Number(date)} ${months[Number(month) - 1] ?? ''} ${year}`
}

/**
 * A moment by the server’s clock, which is said to be UTC.
 *
 * @example
 * dayAndTime(new Date('2026-02-24T09:12:30Z')) // '24 February 2026, 9:12 UTC'
 */
export function dayAndTime(at: Date): string {
  return `${day(at)}, ${at.getUTCHours()}:${String(at.getUTCMinutes()).padStart(2, '0')} UTC`
}

/**
 * The days of a piece of work, first to last.
 *
 * @example
 * [daysFromTo(['2026-03-04', '2026-02-25']), daysFromTo(['2026-03-04']), daysFromTo([])] // ['25 February 2026 to 4 March 2026', '4 March 2026', undefined]
 */
export function daysFromTo(days: readonly string[]): string | undefined {
  const sorted = [...days].sort()
  const [first, last] = [sorted[0], sorted.at(-1)]
  if (first === undefined || last === undefined) return undefined
  return first === last ? day(first) : `${day(first)} to ${day(last)}`
}
