import { expect, test } from 'vitest'
import { aTrial } from '#test/support/a-trial.ts'

test('a rinse is of one thing, has its number once, and its clarity in halves', async () => {
  const { client, id, skein } = await aTrial()
  const { id: skeinId } = await skein()
  const post = (body: object) => client.post(`/api/trials/${id}/rinses`, body)
  expect((await post({ number: 1 })).status).toBe(422)
  expect((await post({ skeinId, number: 1, clarity: 3.3 })).body.errors[0].pointer).toBe('#/clarity')
  const first = await post({ skeinId, number: 1, clarity: '2,5', mlPerG: 20, detergentGL: 0.5 })
  expect(first.body).toMatchObject({ clarity: 2.5, detergentGL: 0.5, minutes: null })
  expect((await post({ skeinId, number: 1, clarity: 3 })).status).toBe(409)
  const corrected = await post({ skeinId, number: 1, clarity: 3, supersedes: first.body.id, reason: 'light' })
  expect(corrected.status).toBe(201)
  const { body } = await client.get(`/api/trials/${id}/rinses`)
  expect(body.items.map((it: Record<string, unknown>) => [it.clarity, it.superseded])).toEqual([
    [2.5, true],
    [3, false],
  ])
  expect((await client.get(`/api/rinses/${first.body.id}`)).body.number).toBe(1)
})
