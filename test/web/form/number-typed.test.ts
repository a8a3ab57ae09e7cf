import { expect, test } from 'vitest'
import { numberTyped, wholeTyped } from '#web/form/number-typed.ts'

test('a comma and a point are the same, a minus may be a true one', () => {
  expect([numberTyped('12,5'), numberTyped('12.5'), numberTyped('−3'), numberTyped(' 4 ')]).toEqual([
    12.5, 12.5, -3, 4,
  ])
})

test('a grade between two steps is its half, and only between neighbours', () => {
  expect([numberTyped('3-4'), numberTyped('4–5'), numberTyped('3-5')]).toEqual([3.5, 4.5, undefined])
})

test('blank is no number and never zero', () => {
  expect([numberTyped(''), numberTyped('  '), numberTyped('some')]).toEqual([undefined, undefined, undefined])
})

test('a whole number says its bounds when it is outside them', () => {
  expect(wholeTyped('51', { min: 1, max: 50 })).toEqual({ fault: 'A whole number from 1 to 50.' })
  expect(wholeTyped('2.5', { min: 1, max: 50 })).toEqual({ fault: 'A whole number from 1 to 50.' })
  expect(wholeTyped('50', { min: 1, max: 50 })).toEqual({ value: 50 })
})
