import fc from 'fast-check'
import { expect, test } from 'vitest'
import { lightGradeText, lightRating } from '#api/science/fastness/light-rating.ts'
import reference from '#test/reference/colour/blue-wool.json' with { type: 'json' }

const card = [
  { number: 1, dE: 16 },
  { number: 2, dE: 8 },
  { number: 3, dE: 4 },
  { number: 4, dE: 2 },
  { number: 5, dE: 1 },
]

// The file's own arithmetic: 3 + log2(14 ÷ 10). A colour that needs longer has changed less at one date.
test('a colour between wools that differ by a doubling stands by the logarithm: 3.4854, a 3-4', () => {
  const example = reference.arithmetic_examples.find(({ a_rating }) => a_rating !== undefined)
  const found = lightRating(1 / 14, [
    { number: 3, dE: 1 / 10 },
    { number: 4, dE: 1 / 20 },
  ])
  expect(found).toMatchObject({ kind: 'between', bracket: [3, 4] })
  expect(found.kind === 'between' && found.rating).toBeCloseTo(example!.a_rating!, 4)
  expect(lightGradeText(example!.a_rating!)).toBe(example!.a_half_step)
})

test.each([
  [16, 1, [1, 2]],
  [8, 2, [2, 3]],
  [Math.sqrt(32), 2.5, [2, 3]],
  [2, 4, [4, 5]],
  [1, 5, [4, 5]],
])('a change of %d is a %d', (specimen, rating, bracket) => {
  const found = lightRating(specimen, card)
  expect(found).toMatchObject({ kind: 'between', bracket, left: [] })
  expect(found.kind === 'between' && found.rating).toBeCloseTo(rating, 12)
})

test('off the card it is below the weakest or above the strongest wool', () => {
  expect(lightRating(16.1, card)).toEqual({ kind: 'below', number: 1, left: [] })
  expect(lightRating(0.99, card)).toEqual({ kind: 'above', number: 5, left: [] })
  expect(lightRating(0, card)).toEqual({ kind: 'above', number: 5, left: [] })
})

test('the order in which the wools stand does not matter, and one may be missing', () => {
  const found = lightRating(4, [
    { number: 4, dE: 2 },
    { number: 2, dE: 8 },
  ])
  expect(found).toMatchObject({ kind: 'between', rating: 3, bracket: [2, 4] })
})

test('a wool that has stopped changing bounds nothing', () => {
  const stopped = [
    { number: 1, dE: 9 },
    { number: 2, dE: 10 },
    { number: 3, dE: 5 },
  ]
  const left = [{ number: 1, why: 'stopped' }]
  expect(lightRating(12, stopped)).toEqual({ kind: 'below', number: 2, left })
  expect(lightRating(9.5, stopped)).toMatchObject({ kind: 'between', bracket: [2, 3], left })
})

test('a wool that has not changed has no logarithm', () => {
  const young = [
    { number: 1, dE: 4 },
    { number: 2, dE: 2 },
    { number: 3, dE: 0 },
  ]
  const left = [{ number: 3, why: 'unchanged' }]
  expect(lightRating(1, young)).toEqual({ kind: 'above', number: 2, left })
  expect(
    lightRating(
      1,
      young.map((wool) => ({ ...wool, dE: 0 })),
    ),
  ).toMatchObject({ kind: 'no-wool' })
})

test('more change is never a better rating', () => {
  const change = fc.double({ min: 0.01, max: 40, noNaN: true })
  const place = (specimen: number) => {
    const found = lightRating(specimen, card)
    if (found.kind === 'below') return 0
    return found.kind === 'between' ? found.rating : 9
  }
  fc.assert(
    fc.property(change, change, (one, two) => {
      expect(place(Math.max(one, two))).toBeLessThanOrEqual(place(Math.min(one, two)))
    }),
  )
})

test.each([
  [3, '3'],
  [3.24, '3'],
  [3.25, '3-4'],
  [3.74, '3-4'],
  [3.75, '4'],
  [7.5, '7-8'],
])('%d is written %s', (rating, text) => {
  expect(lightGradeText(rating)).toBe(text)
})

test.each([
  ['one wool', () => lightRating(1, [{ number: 1, dE: 2 }])],
  ['a wool that stands twice', () => lightRating(1, [card[0]!, card[0]!])],
  ['a negative change', () => lightRating(-1, card)],
  ['a change that is no number', () => lightRating(1, [{ number: 1, dE: Number.NaN }, card[1]!])],
])('%s is refused', (_name, act) => {
  expect(act).toThrow(RangeError)
})
