import { expect, test } from 'vitest'
import { trialRecord } from '#db/trial-record.ts'
import { readDarkTwin, startLadder } from '#test/support/a-ladder.ts'
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

test('a twin’s differences come with what it went through and the sitting they were read in', async () => {
  const db = await emptyDatabase()
  const client = clientOf(db)
  const id = await startLadder(client)
  await readDarkTwin(client, id)
  const { twins } = await trialRecord(db, id)
  expect(twins.map((it) => it.dE00)).toEqual([0.2, 0.4, 0.3, 0.3])
  expect(twins.every((it) => it.shift === null && it.at === null)).toBe(true)
  expect(twins.map((it) => it.wear)).toEqual([{}, {}, {}, {}])
  expect(new Set(twins.map((it) => it.sittingId)).size).toBe(4)
})

test('a twin’s readings give their shift, their sitting and their time', async () => {
  const db = await emptyDatabase()
  const client = clientOf(db)
  const trialId = await startLadder(client)
  const { body: twin } = await client.post(`/api/trials/${trialId}/skeins`, { code: 'twin', role: 'twin' })
  for (const [place, L] of [50, 50.4].entries()) {
    const at = `2026-03-0${place + 1}T09:00:00.000Z`
    const { body: sitting } = await client.post('/api/sittings', {
      trialId,
      method: 'instrument',
      label: `day ${place}`,
      at,
    })
    const reading = { skeinId: twin.id, sittingId: sitting.id, wear: {}, spots: [{ l: L, a: 0, b: 0 }] }
    expect((await client.post(`/api/trials/${trialId}/readings`, reading)).status).toBe(201)
  }
  const { twins, methods } = await trialRecord(db, trialId)
  expect(twins).toHaveLength(1)
  expect(twins[0]?.shift?.[0]).toBeCloseTo(0.4, 12)
  expect(twins[0]?.at).toEqual(new Date('2026-03-02T09:00:00.000Z'))
  expect(twins[0]?.sittingId).not.toBeNull()
  expect(methods).toMatchObject([{ method: 'instrument', instrumentId: null, readingsN: 2 }])
})
