import { expect, test } from 'vitest'
import { aTrial, trialIn } from '#test/support/a-trial.ts'

test('a level is given to exactly one thing', async () => {
  const { client, id, short, session, skein } = await aTrial()
  const post = (body: object) => client.post(`/api/trials/${id}/treatments`, body)
  const { id: sessionId } = await session()
  const { id: skeinId } = await skein()
  expect((await post({ levelId: short })).status).toBe(422)
  expect((await post({ levelId: short, sessionId, skeinId })).status).toBe(422)
  expect((await post({ levelId: short, skeinId })).body).toMatchObject({ skeinId, sessionId: null })
})

test('one place has one level of a factor, whether they come together or one after the other', async () => {
  const { client, id, short, long, skein } = await aTrial()
  const post = (body: object) => client.post(`/api/trials/${id}/treatments`, body)
  const { id: skeinId } = await skein()
  const both = await post({
    items: [
      { levelId: short, skeinId },
      { levelId: long, skeinId },
    ],
  })
  expect(both).toMatchObject({ status: 422, body: { errors: [{ pointer: '#/items/1/levelId' }] } })
  await post({ levelId: short, skeinId })
  expect(await post({ levelId: long, skeinId })).toMatchObject({
    status: 422,
    body: { errors: [{ pointer: '#/levelId' }] },
  })
})

test('the level of another trial is not given', async () => {
  const here = await aTrial()
  const there = await trialIn(here.db, here.client)
  const { id: skeinId } = await here.skein()
  const answer = await here.client.post(`/api/trials/${here.id}/treatments`, {
    levelId: there.short,
    skeinId,
  })
  expect(answer).toMatchObject({ status: 422, body: { errors: [{ pointer: '#/levelId' }] } })
})

test('a level that was taken back may be given otherwise', async () => {
  const { client, id, short, long, skein } = await aTrial()
  const at = `/api/trials/${id}/treatments`
  const { id: skeinId } = await skein()
  const { body } = await client.post(at, { levelId: short, skeinId })
  expect((await client.get(`/api/treatments/${body.id}`)).body.levelId).toBe(short)
  await client.ask('DELETE', `/api/treatments/${body.id}`, undefined, { 'if-match': '1' })
  expect((await client.post(at, { levelId: long, skeinId })).status).toBe(201)
  expect((await client.get(at)).body.items).toMatchObject([{ levelId: long }])
})

test('a session given another level than a vessel of it does not split its skeins', async () => {
  const { client, id, short, long, session, vessel, skein, place } = await aTrial()
  const { id: sessionId } = await session()
  const packet = await vessel(sessionId)
  const { id: skeinId } = await skein()
  await place(packet.id, skeinId)
  const post = (body: object) => client.post(`/api/trials/${id}/treatments`, body)
  expect((await post({ levelId: short, sessionId })).status).toBe(201)
  expect((await post({ levelId: long, vesselId: packet.id })).status).toBe(201)
})
