import { expect, test } from 'vitest'
import { clock, clockToTheSecond, day, dayAndTime, shortDay, weekdayAndDay } from '#web/form/date-words.ts'

const utc = { timeZone: 'UTC' }

test('a day is said with its month and year, a time without a leading nought', () => {
  expect(dayAndTime(new Date('2026-02-24T09:12:30Z'), utc)).toBe('24 February 2026, 9:12')
  expect(day(new Date('2026-03-01T00:00:00Z'), utc)).toBe('1 March 2026')
})

test('midnight is 0:00, not 24:00', () => {
  expect(clock(new Date('2026-02-24T00:00:00Z'), utc)).toBe('0:00')
})

test('a stamp is said to the second', () => {
  expect(clockToTheSecond(new Date('2026-02-24T10:42:07Z'), utc)).toBe('10:42:07')
})

test('days in the near have their weekday', () => {
  expect(weekdayAndDay(new Date('2026-03-11T08:00:00Z'), utc)).toBe('Wednesday, 11 March')
  expect(shortDay(new Date('2026-03-13T08:00:00Z'), utc)).toBe('Fri 13')
})

test('the same moment is another time in another zone', () => {
  expect(clock(new Date('2026-07-01T12:00:00Z'), { timeZone: 'Europe/Berlin' })).toBe('14:00')
})
