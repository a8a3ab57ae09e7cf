import { expect, test } from 'vitest'
import { dueWords } from '#web/pages/due-words.ts'

const now = new Date(2026, 2, 11, 18, 30)

test('what is due today is filled and not late', () => {
  expect(dueWords('2026-03-11', now)).toEqual({ day: 'Today', now: true, late: undefined })
})

test('what was due stands under today and says how late it is', () => {
  expect(dueWords('2026-03-10', now)).toEqual({ day: 'Today', now: true, late: '1 day late' })
  expect(dueWords('2026-03-09', now).late).toBe('2 days late')
})

test('within a week it is the weekday, later the date', () => {
  expect(dueWords('2026-03-13', now)).toEqual({ day: 'Fri 13', now: false, late: undefined })
  expect(dueWords('2026-04-02', now).day).toBe('2 Apr')
})

test('without a day it comes next', () => {
  expect(dueWords(null, now)).toEqual({ day: 'Next', now: false, late: undefined })
})
