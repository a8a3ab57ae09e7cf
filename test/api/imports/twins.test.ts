import { expect, test } from 'vitest'
import { changesOfReading } from '#db/results.ts'
import { startLadder } from '#test/support/a-ladder.ts'
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

test('a twin in a table was read with the washed skeins and was not washed; its readings keep their order', async () => {
  const db = await emptyDatabase()
  const client = clientOf(db)
  const id = await startLadder(client)
  const codes = ['1', '2', '3', '4', '5', '6', '7', '8'].map((session) => `${session} twin`)
  for (const code of codes)
    expect((await client.post(`/api/trials/${id}/skeins`, { code, role: 'twin' })).status).toBe(201)
  const twins = codes.map((code) => `${code},36.0,-14.2,-14.2,36.5,-14.2,-14.2`)
  const text = ['skein,L0,a0,b0,L1,a1,b1', 'A,36.0,-14.2,-14.2,38.0,-13.0,-12.0', ...twins].join('\n')
  const kept = await client.post(`/api/trials/${id}/table`, { text, between: { W2: 3 }, ownVessel: true })
  // One pot and one wash jar: those of skein A.
  expect(kept.body.makes).toMatchObject({ skeins: 1, vessels: 2, readings: 18 })

  const skeins = (await client.get(`/api/trials/${id}/skeins`)).body.items
  const roles = new Map<string, string>(skeins.map((it: { id: string; role: string }) => [it.id, it.role]))
  const readings = (await client.get(`/api/trials/${id}/readings`)).body.items
  const ofTwins = readings.filter((it: { skeinId: string }) => roles.get(it.skeinId) === 'twin')
  expect(ofTwins.map((it: { wear: object }) => it.wear)).toEqual(Array(16).fill({}))
  expect(new Set(ofTwins.map((it: { sittingId: string }) => it.sittingId)).size).toBe(2)

  // Eight re-readings, each lighter by 0.5 than the first: never the other way about.
  const changes = await Promise.all(ofTwins.map((it: { id: string }) => changesOfReading(db, it.id)))
  expect(changes.flat().map(({ basis, dL }) => [basis, Number(dL.toFixed(6))])).toEqual(
    Array(8).fill(['own', 0.5]),
  )
})
