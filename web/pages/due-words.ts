import { shortDay } from '#web/form/date-words.ts'

export type DueWords = {
  /** “Today”, “Fri 13”, “Soon”. */
  readonly day: string
  /** Due now or late: its mark is filled. */
  readonly now: boolean
  readonly late: string | undefined
}

/**
 * A due date as the list says it.
 *
 * @param day As `YYYY-MM-DD`; null is whenever it suits, which is “next”.
 *
 * @example
 * dueWords('2026-03-09', new Date(2026, 2, 11, 8)) // { day: 'Today', now: true, late: '2 days late' }
 * @example
 * dueWords('2026-03-13', new Date(2026, 2, 11, 8)) // { day: 'Fri 13', now: false }
 */
export function dueWords(day: string | null, now: Date): DueWords {
  if (day === null) return { day: 'Next', now: false, late: undefined }
  const at = localDay(day)
  const today = new Date(now.getFullYear(), now.getMonth(), now.getDate())
  const days = Math.round((at.getTime() - today.getTime()) / 86_400_000)
  if (days > 300) return { day: String(at.getFullYear()), now: false, late: undefined }
  if (days > 6) return { day: `${at.getDate()} ${month(at)}`, now: false, late: undefined }
  if (days > 0) return { day: shortDay(at), now: false, late: undefined }
  return {
    day: 'Today',
    now: true,
    late: days === 0 ? undefined : `${-days} ${days === -1 ? 'day' : 'days'} late`,
  }
}

function localDay(day: string): Date {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number)
  return new Date(year, month - 1, date)
}

function month(at: Date): string {
  return new Intl.DateTimeFormat('en-GB', { month: 'short' }).format(at)
}
