import { expect, test } from 'vitest'
import { calculate } from '#test/support/calculate.ts'

// Wools that each need twice the light of the one before; the rating is then a logarithm to base 2, by hand.
const references = [
  { number: 6, dE: 0.5 },
  { number: 1, dE: 16 },
  { number: 2, dE: 8 },
  { number: 3, dE: 4 },
  { number: 4, dE: 2 },
  { number: 5, dE: 1 },
]

test.each([
  [4, 3, '3', [3, 4]],
  [Math.sqrt(8), 3.5, '3-4', [3, 4]],
  [2 ** 1.7, 3.3, '3-4', [3, 4]],
  [2 ** 1.8, 3.2, '3', [3, 4]],
  [16, 1, '1', [1, 2]],
])('a change of %d rates %d, grade %s', async (specimen, rating, grade, bracket) => {
  const { status, body } = await calculate('light-grade', { specimen, references })
  expect(status).toBe(200)
  expect(body.rating).toBeCloseTo(rating, 10)
  expect(body).toMatchObject({ grade, bracket, cautions: [] })
})

test('off the card there is a grade but no rating', async () => {
  const unavailable = { unavailable: expect.any(String) }
  const below = await calculate('light-grade', { specimen: 20, references })
  expect(below.body).toMatchObject({
    grade: 'below 1',
    rating: unavailable,
    bracket: unavailable,
    cautions: [],
  })
  const above = await calculate('light-grade', { specimen: 0.4, references })
  expect(above.body).toMatchObject({ grade: 'above 6', rating: unavailable })
  expect(above.body.cautions).toEqual([expect.stringContaining('Too early')])
})

test('a change under 1.7 is too early to judge, 1.7 is not', async () => {
  expect((await calculate('light-grade', { specimen: 1.69, references })).body.cautions).toHaveLength(1)
  expect((await calculate('light-grade', { specimen: 1.7, references })).body.cautions).toHaveLength(0)
})

test('a wool that has stopped changing bounds nothing, and it is said', async () => {
  const stopped = [
    { number: 1, dE: 9 },
    { number: 2, dE: 10 },
    { number: 3, dE: 5 },
  ]
  const { body } = await calculate('light-grade', { specimen: 12, references: stopped })
  expect(body.grade).toBe('below 2')
  expect(body.cautions).toEqual([expect.stringContaining('do not fall in order. Wool 1')])
})

test('a card that has not changed gives no grade', async () => {
  const young = [
    { number: 1, dE: 0 },
    { number: 2, dE: 0 },
  ]
  const { status, body } = await calculate('light-grade', { specimen: 0, references: young })
  expect(status).toBe(200)
  expect(body.grade).toEqual({ unavailable: expect.any(String) })
})

test.each([
  [{ specimen: -1, references }, '#/specimen'],
  [{ specimen: '2', references }, '#/specimen'],
  [{ references }, '#/specimen'],
  [{ specimen: 2, references: [references[0]] }, '#/references'],
  [{ specimen: 2, references: [references[0], references[0]] }, '#/references/1/number'],
  [{ specimen: 2, references: [references[0], { number: 9, dE: 1 }] }, '#/references/1/number'],
  [{ specimen: 2, references: [references[0], { number: 1.5, dE: 1 }] }, '#/references/1/number'],
  [{ specimen: 2, references: [references[0], { number: 3, dE: -1 }] }, '#/references/1/dE'],
])('%# is refused', async (body, pointer) => {
  const answer = await calculate('light-grade', body)
  expect(answer.status).toBe(422)
  expect(answer.body.errors[0].pointer).toBe(pointer)
})
