import { expect, test } from 'vitest'
import { clockOf, entryOf } from '#web/pages/trial/staggered-words.ts'

const levels = [0, 10, 20, 35, 50, 75].map((value, position) => ({
  id: `level of ${value}`,
  label: String(value),
  value,
  position,
  isReference: value === 75,
}))

test('the clock of a steam ladder: longest in first, all out together, what is not steamed stays out', () => {
  expect(clockOf({ unit: 'min', levels }, { vessel: 'packet' })).toEqual([
    '0 min: 75 min packets in',
    '+25 min: 50 min packets in',
    '+40 min: 35 min packets in',
    '+55 min: 20 min packets in',
    '+65 min: 10 min packets in',
    '75 min: all out together',
    '0 min packets stay out',
  ])
})

test('each packet says when it goes in', () => {
  const of = (value: number) => entryOf({ unit: 'min', levels }, [{ levelId: `level of ${value}` }])
  expect([75, 50, 10, 0].map(of)).toEqual(['0 min', '+25 min', '+65 min', 'stays out'])
})
