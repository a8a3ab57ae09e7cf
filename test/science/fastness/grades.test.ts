import { expect, test } from 'vitest'
import { gradeNumber, grades, gradeText } from '#api/science/fastness/grades.ts'

test('the nine half steps go to numbers and back, best first', () => {
  expect(grades.map(gradeNumber)).toEqual([5, 4.5, 4, 3.5, 3, 2.5, 2, 1.5, 1])
  expect(grades.map(gradeNumber).map(gradeText)).toEqual([...grades])
})

test.each([0.5, 5.5, 3.3, Number.NaN, Number.POSITIVE_INFINITY])('%d is no grade', (value) => {
  expect(() => gradeText(value)).toThrow(RangeError)
})

test.each(['3.5', '4-3', '', '0', '4–5', 'constructor'])('“%s” is no grade', (text) => {
  expect(() => gradeNumber(text)).toThrow(RangeError)
})
