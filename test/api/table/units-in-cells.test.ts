import { expect, test } from 'vitest'
import { readVariable } from '#api/table/read-cell.ts'
import { levelIn } from '#api/table/read-level.ts'

const steam = {
  key: 'steamTime',
  label: 'Steam time',
  kind: 'number' as const,
  isNew: true,
  levels: [],
}

test('“2 h” in a column of minutes is 120 minutes, as a level and as a condition', () => {
  expect(levelIn('2 h', steam, 'min')).toMatchObject({ value: 120 })
  expect(levelIn('2 h', steam, undefined)).toMatchObject({ value: 120 })
  expect(readVariable('2 h', 'hold', 'min')).toMatchObject({ kind: 'value', value: 120 })
})

test('“27 h” in a column of minutes is refused as 1620 minutes, never taken as 27', () => {
  expect(levelIn('27 h', steam, 'min')).toHaveProperty('detail', expect.stringContaining('1620'))
  expect(readVariable('27 h', 'steamTime', 'min')).toMatchObject({ kind: 'fault' })
})

test('a unit that cannot be a time is asked about', () => {
  expect(levelIn('27 g', steam, 'min')).toHaveProperty('detail')
  expect(readVariable('27 g', 'steamTime', 'min')).toMatchObject({ kind: 'fault' })
})

test('a factor of one’s own asks for the unit of its column', () => {
  const own = { ...steam, key: 'wait', label: 'Wait' }
  expect(levelIn('27 h', own, 'min')).toEqual({
    detail: '“27 h” is in h, the column in min. Write it in min.',
  })
  expect(levelIn('27 min', own, 'min')).toMatchObject({ value: 27 })
})

test('the unit of the column in the cell changes nothing', () => {
  expect(levelIn('35 min', steam, 'min')).toMatchObject({ value: 35 })
  expect(readVariable('35 min', 'steamTime', 'min')).toMatchObject({ kind: 'value', value: 35 })
})
