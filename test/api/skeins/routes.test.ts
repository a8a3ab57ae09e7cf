import { randomUUID } from 'node:crypto'
import { expect, test } from 'vitest'
import { aTrial, changed, made, trialIn } from '#test/support/a-trial.ts'

test('a part may come together with what it was cut from', async () => {
  const { client, id } = await aTrial()
  const parent = randomUUID()
  const { items } = await made(client, `/api/trials/${id}/skeins`, {
    items: [
      { code: 'A', id: parent },
      { code: 'A foil', cutFromId: parent },
    ],
  })
  expect(items[1].cutFromId).toBe(parent)
})

test('a skein is not cut from itself or from its own part', async () => {
  const { client, id } = await aTrial()
  const [one, two] = [randomUUID(), randomUUID()]
  const circle = await client.post(`/api/trials/${id}/skeins`, {
    items: [
      { code: 'A', id: one, cutFromId: two },
      { code: 'B', id: two, cutFromId: one },
    ],
  })
  expect(circle).toMatchObject({ status: 422, body: { errors: [{ pointer: '#/items/0/cutFromId' }] } })

  const { items } = await made(client, `/api/trials/${id}/skeins`, {
    items: [
      { code: 'A', id: one },
      { code: 'B', id: two, cutFromId: one },
    ],
  })
  const round = await changed(client, `/api/skeins/${items[0].id}`, 1, { cutFromId: two })
  expect(round).toMatchObject({ status: 422, body: { errors: [{ pointer: '#/cutFromId' }] } })
  const itself = await changed(client, `/api/skeins/${one}`, 1, { cutFromId: one })
  expect(itself.status).toBe(422)
})

test('a skein of another trial is no parent', async () => {
  const here = await aTrial()
  const there = await trialIn(here.db, here.client)
  const stranger = await there.skein()
  const answer = await here.client.post(`/api/trials/${here.id}/skeins`, {
    code: 'A',
    cutFromId: stranger.id,
  })
  expect(answer).toMatchObject({
    status: 422,
    body: {
      detail: 'Records of two trials cannot be mixed.',
      errors: [{ pointer: '#/cutFromId', detail: 'This skein belongs to another trial.' }],
    },
  })
})

test('lost needs a reason, a number needs a blue wool, and a code stands once', async () => {
  const { client, id } = await aTrial()
  const post = (body: object) => client.post(`/api/trials/${id}/skeins`, body)
  expect((await post({ code: 'A', status: 'lost' })).body.errors[0].pointer).toBe('#/lostReason')
  expect((await post({ code: 'A', blueWoolNumber: 3 })).body.errors[0].pointer).toBe('#/blueWoolNumber')
  expect((await post({ code: 'BW3', role: 'blue wool', blueWoolNumber: 3 })).status).toBe(201)
  expect((await post({ code: 'BW3' })).status).toBe(409)
})

test('a skein of which something was recorded stays', async () => {
  const { client, skein, outcome } = await aTrial()
  const { id } = await skein()
  await outcome({ kind: 'felting', skeinId: id, value: 1 })
  const answer = await client.ask('DELETE', `/api/skeins/${id}`, undefined, { 'if-match': '1' })
  expect(answer.status).toBe(409)
})

test('what was lost and is found has no reason any more', async () => {
  const { client, skein } = await aTrial()
  const { id } = await skein({ status: 'lost', lostReason: 'cat' })
  expect((await changed(client, `/api/skeins/${id}`, 1, { status: 'done' })).body).toMatchObject({
    status: 'done',
    lostReason: null,
  })
})
