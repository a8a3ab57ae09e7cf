import { expect, test } from 'vitest'
import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import { mcdm, meanLab } from '#api/science/colour/mean-colour.ts'

test('the mean of three places is the mean of each coordinate', () => {
  expect(
    meanLab([
      { L: 50, a: 1, b: -3 },
      { L: 51, a: 2, b: -6 },
      { L: 55, a: 6, b: 0 },
    ]),
  ).toEqual({
    L: 52,
    a: 3,
    b: -3,
  })
})

test('noise averages away in the mean colour but not in a mean of differences', () => {
  const still = { L: 50, a: 0, b: 0 }
  const noisy = [
    { L: 51, a: 0, b: 0 },
    { L: 49, a: 0, b: 0 },
  ]
  expect(ciede2000(still, meanLab(noisy))).toBe(0)
  expect(mcdm(noisy)).toBeGreaterThan(0.9)
})

// By hand: S_L at mean L* 49.5 and 50.5 is 1 + 0.015·0.25 ÷ √20.25 = 1.00083, so each place is 0.99917 away.
test('two greys two apart are 0.99917 from their mean', () => {
  expect(
    mcdm([
      { L: 49, a: 0, b: 0 },
      { L: 51, a: 0, b: 0 },
    ]),
  ).toBeCloseTo(1 / (1 + (0.015 * 0.25) / 4.5), 12)
})

test('one place has no spread; no place has no mean', () => {
  expect(mcdm([{ L: 40, a: 5, b: 5 }])).toBe(0)
  expect(() => meanLab([])).toThrow(RangeError)
  expect(() => mcdm([])).toThrow(RangeError)
})
