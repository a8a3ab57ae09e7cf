import { expect, test } from 'vitest'
import { aTrial, changed } from '#test/support/a-trial.ts'

async function withJar() {
  const trial = await aTrial()
  const session = await trial.session()
  const vessel = await trial.vessel(session.id, { label: 'jar 3', stage: 'wash', kind: 'jar' })
  const piece = await trial.skein()
  const at = `/api/vessels/${vessel.id}`
  return { ...trial, sessionId: String(session.id), vesselId: String(vessel.id), piece, at }
}

test('a lost vessel needs a reason', async () => {
  const { client, at } = await withJar()
  const answer = await changed(client, at, 1, { status: 'lost' })
  expect(answer).toMatchObject({ status: 422, body: { errors: [{ pointer: '#/lostReason' }] } })
})

test('what lay in a lost vessel is lost with it, and the parts cut from it afterwards', async () => {
  const { client, id, at, vesselId, piece, place } = await withJar()
  await place(vesselId, piece.id, { inAt: '2026-02-03T09:00:00Z' })
  const { body } = await client.post(`/api/trials/${id}/skeins`, {
    items: [
      { code: 'before', cutFromId: piece.id, cutAt: '2026-02-02T09:00:00Z' },
      { code: 'after', cutFromId: piece.id, cutAt: '2026-02-04T09:00:00Z' },
      { code: 'elsewhere' },
    ],
  })
  expect(body.items).toHaveLength(3)
  expect((await changed(client, at, 1, { status: 'lost', lostReason: 'cracked' })).status).toBe(200)
  const skeins = (await client.get(`/api/trials/${id}/skeins`)).body.items
  expect(skeins.map((it: Record<string, unknown>) => [it.code, it.status, it.lostReason])).toEqual([
    ['A1', 'lost', 'jar 3: cracked'],
    ['before', 'planned', null],
    ['after', 'lost', 'jar 3: cracked'],
    ['elsewhere', 'planned', null],
  ])
})

test('found again, a vessel gives back what was lost with it and nothing else', async () => {
  const { client, id, at, vesselId, piece, skein, place } = await withJar()
  const burnt = await skein({ code: 'burnt', status: 'lost', lostReason: 'burnt' })
  await place(vesselId, piece.id)
  await place(vesselId, burnt.id)
  await changed(client, at, 1, { status: 'lost', lostReason: 'cracked' })
  const back = await changed(client, at, 2, { status: 'done' })
  expect(back.body).toMatchObject({ status: 'done', lostReason: null })
  const skeins = (await client.get(`/api/trials/${id}/skeins`)).body.items
  expect(skeins.map((it: Record<string, unknown>) => [it.code, it.status, it.lostReason])).toEqual([
    ['A1', 'done', null],
    ['burnt', 'lost', 'burnt'],
  ])
})

test('what is laid into a lost vessel is lost', async () => {
  const { client, at, vesselId, piece, place } = await withJar()
  await changed(client, at, 1, { status: 'lost', lostReason: 'cracked' })
  await place(vesselId, piece.id)
  expect((await client.get(`/api/skeins/${piece.id}`)).body.status).toBe('lost')
})

test('a vessel of which something was recorded stays', async () => {
  const { client, at, vesselId, outcome } = await withJar()
  await outcome({ kind: 'pH', vesselId, value: 4.5 })
  const answer = await client.ask('DELETE', at, undefined, { 'if-match': '1' })
  expect(answer).toMatchObject({ status: 409, body: { detail: expect.stringContaining('lost') } })
})

test('one stage of a session has one vessel of a name', async () => {
  const { client, sessionId } = await withJar()
  const jar = { label: 'jar 3', stage: 'wash', kind: 'jar' }
  expect((await client.post(`/api/sessions/${sessionId}/vessels`, jar)).status).toBe(409)
})
