import { expect, test } from 'vitest'
import { aTrial, trialIn } from '#test/support/a-trial.ts'

test('acid in doses is several stamps, each with what was entered', async () => {
  const { client, id, session } = await aTrial()
  const { id: sessionId } = await session()
  const dose = (at: string, amount: number) => ({
    sessionId,
    kind: 'added',
    what: 'vinegar',
    at,
    entered: { amount, unit: 'tbsp', strengthPercent: 5 },
  })
  const items = [dose('2026-02-01T10:00:00+01:00', 2), dose('2026-02-01T10:20:00+01:00', 1)]
  expect((await client.post(`/api/trials/${id}/stamps`, { items })).status).toBe(201)
  const { body } = await client.get(`/api/trials/${id}/stamps`)
  expect(body.items).toMatchObject([
    { at: '2026-02-01T09:00:00.000Z', entered: { amount: 2, unit: 'tbsp', strengthPercent: 5 } },
    { at: '2026-02-01T09:20:00.000Z', entered: { amount: 1 } },
  ])
  expect((await client.get(`/api/stamps/${body.items[0].id}`)).body.what).toBe('vinegar')
})

test('a stamp is of a session of its own trial, and says when', async () => {
  const here = await aTrial()
  const there = await trialIn(here.db, here.client)
  const { id: sessionId } = await there.session()
  const post = (body: object) => here.client.post(`/api/trials/${here.id}/stamps`, { kind: 'note', ...body })
  const strange = await post({ sessionId, at: '2026-02-01T10:00:00Z' })
  expect(strange.body.errors).toEqual([
    { pointer: '#/sessionId', detail: 'This session belongs to another trial.' },
  ])
  const own = await here.session()
  expect((await post({ sessionId: own.id })).body.errors[0].pointer).toBe('#/at')
})
