import { expect, test } from 'vitest'
import { answerOf, faultsAt, Refused } from '#web/api/client.ts'

const problem = (status: number, body: unknown): Response =>
  new Response(JSON.stringify(body), { status, headers: { 'content-type': 'application/problem+json' } })

test('an answer is its value', async () => {
  expect(
    await answerOf(new Response('{"id":"a"}', { headers: { 'content-type': 'application/json' } })),
  ).toEqual({ id: 'a' })
})

test('a refusal keeps its name, its sentence and the faults of its fields', async () => {
  const asked = answerOf(
    problem(422, {
      type: '/problems/at-fault',
      title: 'Some of this cannot be kept as it is',
      detail: 'The margin is not a number.',
      errors: [{ pointer: '#/margin/amount', detail: 'The margin is more than 0.' }],
    }),
  )
  const refused = await asked.catch((error: unknown) => error)
  expect(refused).toBeInstanceOf(Refused)
  expect(refused).toMatchObject({
    status: 422,
    problem: 'at-fault',
    message: 'The margin is not a number.',
    isBug: false,
  })
  expect(faultsAt(refused, '#/margin')).toEqual(['The margin is more than 0.'])
  expect(faultsAt(refused, '#/mar')).toEqual([])
})

test('a bug shows the number of its request and nothing of its inside', async () => {
  const answer = new Response('<h1>oops</h1>', {
    status: 502,
    headers: { 'content-type': 'text/html', 'x-request-id': 'r-7' },
  })
  await expect(answerOf(answer)).rejects.toMatchObject({
    status: 502,
    problem: 'broken',
    requestId: 'r-7',
    isBug: true,
  })
})

test.each(['busy', 'database-away'])('%s is said in its own words, not as a bug', async (name) => {
  const asked = answerOf(
    problem(503, { type: `/problems/${name}`, title: 'Later', detail: 'Wait a little.' }),
  )
  await expect(asked).rejects.toMatchObject({
    problem: name,
    status: 503,
    message: 'Wait a little.',
    isBug: false,
  })
})

test('no answer at all is said in words, not as a broken page', async () => {
  await expect(answerOf(Promise.reject(new TypeError('fetch failed')))).rejects.toMatchObject({
    problem: 'no-connection',
    status: 0,
    isBug: false,
  })
})

test('leaving a page while it reads is no refusal', async () => {
  const left = Object.assign(new Error('left'), { name: 'AbortError' })
  await expect(answerOf(Promise.reject(left))).rejects.toBe(left)
})

test('a fault of a field that was never refused is no fault', () => {
  expect(faultsAt(new Error('other'), '#/margin')).toEqual([])
})
