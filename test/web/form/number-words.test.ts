import { expect, test } from 'vitest'
import {
  counted,
  figure,
  fromTo,
  grouped,
  listed,
  perCent,
  signed,
  withUnit,
} from '#web/form/number-words.ts'

test('a number below nought has a true minus', () => {
  expect(figure(-0.4712, 2)).toBe('\u22120.47')
})

test('what rounds to nothing has no sign', () => {
  expect(figure(-0.004, 2)).toBe('0.00')
  expect(signed(-0.04, 1)).toBe('0.0')
  expect(signed(0.04, 1)).toBe('0.0')
})

test('a change says which way it went', () => {
  expect(signed(7.31, 1)).toBe('+7.3')
  expect(signed(-1.2, 1)).toBe('\u22121.2')
})

test('an interval is said with “to”, since a dash would read as a minus', () => {
  expect(fromTo(-0.4712, 0.4999)).toBe('\u22120.47 to 0.50')
})

test('a figure does not part from its unit', () => {
  expect(perCent(0.9)).toBe('90\u00a0%')
  expect(withUnit('35', 'min')).toBe('35\u00a0min')
  expect(withUnit('35', '')).toBe('35')
})

test('one is one, all else are many', () => {
  expect([counted(1, 'skein'), counted(0, 'skein'), counted(2, 'dye lot')]).toEqual([
    '1 skein',
    '0 skeins',
    '2 dye lots',
  ])
  expect(grouped(1234567)).toBe('1,234,567')
})

test('things in a row end in “and”', () => {
  expect([listed([]), listed(['a']), listed(['a', 'b']), listed(['a', 'b', 'c'])]).toEqual([
    '',
    'a',
    'a and b',
    'a, b and c',
  ])
})
