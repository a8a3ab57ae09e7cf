import { expect, test } from 'vitest'
import { weighingError } from '#api/science/recipe/weighing-error.ts'

test('0.3 g on a scale of 0.1 g is right to within 17 %', () => {
  // Half a step is 0.05 g, a sixth of 0.3 g: by hand.
  expect(weighingError(0.3, 0.1)).toBeCloseTo(100 / 6, 10)
})

test('five steps of the scale are right to within 10 %', () => {
  expect(weighingError(0.5, 0.1)).toBeCloseTo(10, 10)
})

test('nothing weighed has no error', () => {
  expect(() => weighingError(0, 0.1)).toThrow(RangeError)
})
