import { expect, test } from 'vitest'
import { aTrial, changed, trialIn } from '#test/support/a-trial.ts'

test('a skein lies in many vessels, but once in each', async () => {
  const { client, session, vessel, skein, place } = await aTrial()
  const { id: sessionId } = await session()
  const packet = await vessel(sessionId)
  const jar = await vessel(sessionId, { stage: 'wash', kind: 'jar' })
  const { id } = await skein()
  await place(packet.id, id, { place: 'left' })
  await place(jar.id, id)
  expect((await client.post(`/api/vessels/${jar.id}/placements`, { skeinId: id })).status).toBe(409)
  const { body } = await client.get(`/api/vessels/${packet.id}/placements`)
  expect(body.items).toMatchObject([{ skeinId: id, place: 'left', covered: false }])
})

test('a skein of another trial is not laid into a vessel', async () => {
  const here = await aTrial()
  const there = await trialIn(here.db, here.client)
  const vessel = await here.vessel((await here.session()).id)
  const stranger = await there.skein()
  const answer = await here.client.post(`/api/vessels/${vessel.id}/placements`, {
    items: [{ skeinId: stranger.id }],
  })
  expect(answer).toMatchObject({ status: 422, body: { errors: [{ pointer: '#/items/0/skeinId' }] } })
})

test('what comes out before it goes in is refused, on writing and on changing', async () => {
  const { client, session, vessel, skein, place } = await aTrial()
  const packet = await vessel((await session()).id)
  const { id: skeinId } = await skein()
  const [early, late] = ['2026-02-01T09:00:00Z', '2026-02-01T10:00:00Z']
  const at = `/api/vessels/${packet.id}/placements`
  expect((await client.post(at, { skeinId, inAt: late, outAt: early })).status).toBe(422)
  const kept = await place(packet.id, skeinId, { inAt: late })
  const answer = await changed(client, `/api/placements/${kept.id}`, 1, { outAt: early })
  expect(answer).toMatchObject({ status: 422, body: { errors: [{ pointer: '#/outAt' }] } })
})

test('two vessels that were given different levels do not hold one skein', async () => {
  const { client, id, short, long, session, vessel, skein, place } = await aTrial()
  const { id: sessionId } = await session()
  const one = await vessel(sessionId)
  const other = await vessel(sessionId, { label: 'packet 2' })
  await client.post(`/api/trials/${id}/treatments`, {
    items: [
      { vesselId: one.id, levelId: short },
      { vesselId: other.id, levelId: long },
    ],
  })
  const { id: skeinId } = await skein()
  await place(one.id, skeinId)
  const answer = await client.post(`/api/vessels/${other.id}/placements`, { skeinId })
  expect(answer).toMatchObject({
    status: 422,
    body: { detail: 'Skein A1 would have two levels of steamTime.' },
  })
})
