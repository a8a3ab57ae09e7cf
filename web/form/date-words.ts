/** Days and times as they are said here. The zone is the reader's own unless another is given. */

type Zone = { readonly timeZone?: string }

/**
 * A day and a time: what is put on record.
 *
 * @example
 * dayAndTime(new Date('2026-02-24T09:12:30Z'), { timeZone: 'UTC' }) // '24 February 2026, 9:12'
 */
export function dayAndTime(at: Date, zone: Zone = {}): string {
  return `${day(at, zone)}, ${clock(at, zone)}`
}

/**
 * A day with its year.
 *
 * @example
 * day(new Date('2026-02-24T09:12:30Z'), { timeZone: 'UTC' }) // '24 February 2026'
 */
export function day(at: Date, zone: Zone = {}): string {
  const parts = partsOf(at, { ...zone, day: 'numeric', month: 'long', year: 'numeric' })
  return `${parts.day} ${parts.month} ${parts.year}`
}

/**
 * A day as the head of a page says it.
 *
 * @example
 * weekdayAndDay(new Date('2026-03-11T08:00:00Z'), { timeZone: 'UTC' }) // 'Wednesday, 11 March'
 */
export function weekdayAndDay(at: Date, zone: Zone = {}): string {
  const parts = partsOf(at, { ...zone, weekday: 'long', day: 'numeric', month: 'long' })
  return `${parts.weekday}, ${parts.day} ${parts.month}`
}

/**
 * A day in the near, as in a list of what is due.
 *
 * @example
 * shortDay(new Date('2026-03-13T08:00:00Z'), { timeZone: 'UTC' }) // 'Fri 13'
 */
export function shortDay(at: Date, zone: Zone = {}): string {
  const parts = partsOf(at, { ...zone, weekday: 'short', day: 'numeric' })
  return `${parts.weekday} ${parts.day}`
}

/**
 * The time of day, without a leading nought.
 *
 * @example
 * clock(new Date('2026-02-24T09:02:30Z'), { timeZone: 'UTC' }) // '9:02'
 */
export function clock(at: Date, zone: Zone = {}): string {
  const parts = partsOf(at, { ...zone, hour: 'numeric', minute: '2-digit', hourCycle: 'h23' })
  return `${Number(parts.hour)}:${parts.minute?.padStart(2, '0')}`
}

/**
 * The time of day to the second, as a stamp is kept.
 *
 * @example
 * clockToTheSecond(new Date('2026-02-24T10:42:07Z'), { timeZone: 'UTC' }) // '10:42:07'
 */
export function clockToTheSecond(at: Date, zone: Zone = {}): string {
  const parts = partsOf(at, {
    ...zone,
    hour: 'numeric',
    minute: '2-digit',
    second: '2-digit',
    hourCycle: 'h23',
  })
  return `${Number(parts.hour)}:${parts.minute?.padStart(2, '0')}:${parts.second?.padStart(2, '0')}`
}

function partsOf(at: Date, options: Intl.DateTimeFormatOptions): Partial<Record<string, string>> {
  const parts = new Intl.DateTimeFormat('en-GB', options).formatToParts(at)
  return Object.fromEntries(parts.map(({ type, value }) => [type, value]))
}
