import { randomUUID } from 'node:crypto'
import { expect, test } from 'vitest'
import { aTrial, changed, made, trialIn } from '#test/support/a-trial.ts'

test('the sittings of a trial are its own and the shared ones', async () => {
  const here = await aTrial()
  const there = await trialIn(here.db, here.client)
  await here.sitting({ label: 'here' })
  await there.sitting({ label: 'there' })
  await made(here.client, '/api/sittings', { method: 'eye', label: 'lamp' })
  const labels = async (query: string) =>
    (await here.client.get(`/api/sittings${query}`)).body.items.map((it: { label: string }) => it.label)
  expect(await labels(`?trialId=${here.id}`)).toEqual(['here', 'lamp'])
  expect(await labels('')).toEqual(['here', 'there', 'lamp'])
})

test('a sitting names a trial, an instrument and a standard that are there', async () => {
  const here = await aTrial()
  const there = await trialIn(here.db, here.client)
  const { id: stranger } = await there.skein()
  const post = (body: object) => here.client.post('/api/sittings', { method: 'photo', label: 'x', ...body })
  expect((await post({ trialId: randomUUID() })).body.errors[0].pointer).toBe('#/trialId')
  expect((await post({ instrumentId: randomUUID() })).body.errors[0].pointer).toBe('#/instrumentId')
  const strange = await post({ trialId: here.id, inFrameStandardId: stranger })
  expect(strange.body.errors[0].pointer).toBe('#/inFrameStandardId')
})

test('a change of settings decides anew what is compared', async () => {
  const { client, sitting, skein, reading, results } = await aTrial()
  const before = await sitting()
  const after = await sitting({ label: 'after' })
  const { id } = await skein()
  await reading(id, before.id, [45, 25, -7])
  await reading(id, after.id, [47, 22, -6], { wear: { W2: 3 } })
  expect(await results('dE00')).toHaveLength(1)
  expect((await changed(client, `/api/sittings/${after.id}`, 1, { illuminant: 'F11' })).status).toBe(200)
  expect(await results('dE00')).toEqual([])
  await changed(client, `/api/sittings/${after.id}`, 2, { illuminant: null })
  expect(await results('dE00')).toHaveLength(1)
})

test('a sitting in which something was read stays', async () => {
  const { client, sitting, skein, reading } = await aTrial()
  const used = await sitting()
  await reading((await skein()).id, used.id, [45, 25, -7])
  const at = `/api/sittings/${used.id}`
  expect((await client.ask('DELETE', at, undefined, { 'if-match': '1' })).status).toBe(409)
})
