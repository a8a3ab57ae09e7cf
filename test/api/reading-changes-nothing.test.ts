import { expect, test } from 'vitest'
import { exampleTrials } from '#db/sample-trials/example-trials.ts'
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'
import { addressesOf } from '#test/support/wrong-bodies.ts'

test('every GET answers in a transaction in which the database lets nothing be written', async () => {
  const db = await emptyDatabase()
  const client = clientOf(db)
  const { trialIds } = (await client.post('/api/example-studio')).body
  expect(trialIds).toHaveLength(exampleTrials.length)
  const [trial] = trialIds
  const sessions = (await client.get(`/api/trials/${trial}/sessions`)).body.items
  const vessels = (await client.get(`/api/sessions/${sessions[0].id}/vessels`)).body.items
  const skeins = (await client.get(`/api/trials/${trial}/skeins`)).body.items
  const readings = (await client.get(`/api/trials/${trial}/readings`)).body.items
  await client.post(`/api/trials/${trial}/evidence-sheets`)
  const sheets = (await client.get(`/api/trials/${trial}/evidence-sheets`)).body.items
  const ids: Record<string, string> = {
    trials: trial,
    sessions: sessions[0].id,
    vessels: vessels[0].id,
    skeins: skeins[0].id,
    readings: readings[0].id,
  }
  const gets = addressesOf((await client.get('/api/openapi.json')).body)
    .filter(({ method }) => method === 'GET')
    .map(({ path }) =>
      path.replace(/\/api\/(\w+)\/\{id\}/, (all, noun) => (ids[noun] ? `/api/${noun}/${ids[noun]}` : all)),
    )
    .map((path) => path.replace('{edition}', '1').replace(/\{\w+\}/g, trial))
  const answers: [string, number][] = []
  await db
    .transaction()
    .setAccessMode('read only')
    .execute(async (tx) => {
      const reader = clientOf(tx)
      for (const path of [
        ...gets,
        `/sheets/trials/${trial}`,
        ...sheets.map(({ id }: { id: string }) => `/sheets/${id}`),
      ])
        answers.push([path, (await reader.get(path)).status])
    })
  expect(answers.filter(([, status]) => status !== 200 && status !== 404)).toEqual([])
  expect(answers.filter(([, status]) => status === 200).length).toBeGreaterThan(25)
})
