import { randomUUID } from 'node:crypto'
import { expect, test } from 'vitest'
import { aTrial, changed, made, trialIn } from '#test/support/a-trial.ts'

test('an amount is kept as it was entered, beside its value in the unit of the table', async () => {
  const { session } = await aTrial()
  const entered = { amount: '1/2', unit: 'h' }
  const kept = await session({ conditions: { steamTime: { entered }, hold: '12,5', ramp: '' } })
  expect(kept.conditions).toEqual({ steamTime: { entered, value: 30 }, hold: 12.5 })
})

test('an unknown variable is refused unless the trial has a factor of that name', async () => {
  const { client, id, session } = await aTrial()
  const moonlit = { label: 'run 1', conditions: { moon: 'full' } }
  const answer = await client.post(`/api/trials/${id}/sessions`, { items: [{ label: 'run 0' }, moonlit] })
  expect(answer).toMatchObject({ status: 422, body: { errors: [{ pointer: '#/items/1/conditions/moon' }] } })
  await client.post(`/api/trials/${id}/factors`, {
    key: 'moon',
    stage: 'dye',
    kind: 'category',
    levels: [{ label: 'full' }, { label: 'new' }],
  })
  expect((await session(moonlit)).conditions).toEqual({ moon: 'full' })
})

test('an impossible value is refused with what was probably meant, an unlikely one kept and asked about', async () => {
  const { client, id, session } = await aTrial()
  const answer = await client.post(`/api/trials/${id}/sessions`, {
    label: 'run 1',
    conditions: { steamTime: 3500 },
  })
  expect(answer.body.errors).toEqual([
    {
      pointer: '#/conditions/steamTime',
      detail: 'Steam time 3500 min is outside 0–480 min. Did you mean 35?',
    },
  ])
  const kept = await session({ conditions: { acid: 150 } })
  expect(kept.doubts).toEqual([
    {
      pointer: '#/conditions/acid',
      detail: 'Vinegar 150 mL per 100 g is three times the usual. Keep it?',
    },
  ])
})

test('two sessions of one kind have two names', async () => {
  const { client, id, session } = await aTrial()
  await session({ label: 'run 1' })
  expect((await client.post(`/api/trials/${id}/sessions`, { label: 'run 1' })).status).toBe(409)
  expect((await session({ label: 'run 1', kind: 'wash' })).kind).toBe('wash')
})

test('a session in which something was recorded stays; an empty one goes', async () => {
  const { client, id, session } = await aTrial()
  const used = await session()
  const empty = await session({ label: 'run 2' })
  await client.post(`/api/trials/${id}/stamps`, {
    sessionId: used.id,
    kind: 'lid on',
    at: '2026-02-01T09:00:00+01:00',
  })
  const remove = (sessionId: string) =>
    client.ask('DELETE', `/api/sessions/${sessionId}`, undefined, { 'if-match': '1' })
  expect((await remove(used.id)).status).toBe(409)
  expect((await remove(empty.id)).status).toBe(204)
  expect((await client.get(`/api/trials/${id}/sessions`)).body.items).toHaveLength(1)
})

test('a change of conditions reaches the results of the skeins below', async () => {
  const trial = await aTrial()
  const session = await trial.session({ altitudeM: 300 })
  const vessel = await trial.vessel(session.id)
  const skein = await trial.skein()
  await trial.place(vessel.id, skein.id)
  await trial.outcome({ kind: 'felting', skeinId: skein.id, value: 2 })
  const answer = await changed(trial.client, `/api/sessions/${session.id}`, 1, { conditions: { heatUp: 12 } })
  expect(answer.body).toMatchObject({ conditions: { heatUp: 12 }, altitudeM: 300, version: 2 })
  expect((await trial.results('felting'))[0]?.resolved).toEqual({ altitude: 300, heatUp: 12 })
})

test('there are no sessions of a trial that is not there', async () => {
  const { client } = await aTrial()
  const at = `/api/trials/${randomUUID()}/sessions`
  expect((await client.get(at)).status).toBe(404)
  expect((await client.post(at, { label: 'run 1' })).status).toBe(404)
})

test('a wash day that trials share holds pieces of all of them', async () => {
  const here = await aTrial()
  const there = await trialIn(here.db, here.client)
  await here.session()
  const day = await made(here.client, '/api/sessions', { kind: 'wash', label: 'wash day', altitudeM: 20 })
  expect(day.trialId).toBeNull()
  expect((await here.client.get('/api/sessions')).body.items).toMatchObject([{ label: 'wash day' }])
  const jar = await here.vessel(day.id, { stage: 'wash', kind: 'jar' })
  for (const trial of [here, there]) {
    const { id: skeinId } = await trial.skein()
    await trial.place(jar.id, skeinId)
    await trial.outcome({ kind: 'felting', skeinId, value: 2 })
    expect(await trial.results('felting')).toMatchObject([{ sessionId: day.id, resolved: { altitude: 20 } }])
  }
})
