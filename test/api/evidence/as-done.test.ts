import { expect, test } from 'vitest'
import { startLadder, storyText } from '#test/support/a-ladder.ts'
import { changed as changedRecord, made } from '#test/support/a-trial.ts'
import { type Client, clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

/** The ladder after three warm hand washes, of which nothing but their number was written down. */
async function washed(): Promise<{ client: Client; id: string }> {
  const client = clientOf(await emptyDatabase())
  const id = await startLadder(client)
  const text = storyText('steam-time-ladder.csv')
  await made(client, `/api/trials/${id}/table`, { text, between: { W2: 3 }, ownVessel: true })
  return { client, id }
}

/** What the frozen sheet says under “Test”, and its whole page. */
async function frozen(client: Client, id: string): Promise<{ test: string; page: string }> {
  await made(client, `/api/trials/${id}/verdicts`, {})
  const sheet = await made(client, `/api/trials/${id}/evidence-sheets`, {})
  const page: string = (await client.get(sheet.path)).body
  return { test: /<dt>Test<\/dt><dd>(.*?)<\/dd>/s.exec(page)?.[1] ?? '', page }
}

type Stored = { id: string; version: number; kind: string }

async function washVessels(client: Client, id: string): Promise<Stored[]> {
  const sessions: Stored[] = (await client.get(`/api/trials/${id}/sessions`)).body.items
  const wash = sessions.find(({ kind }) => kind === 'wash')
  return (await client.get(`/api/sessions/${wash?.id}/vessels`)).body.items
}

// The protocol W2 of the tool: 40 °C, 30 min, 50 mL/g, 5 g/L; its colours for D65 and 10°.
const ofTheProtocol = ['40 °C', '30 min', '50 mL/g', '5 g/L']

test('of a wash whose conditions were left blank the sheet says “not recorded”, and no number of its protocol', async () => {
  const { client, id } = await washed()
  const { test, page } = await frozen(client, id)
  expect(test).toBe(
    'Three warm hand washes. As done: not recorded. A home test near protocol W2 of this tool.',
  )
  for (const number of ofTheProtocol) expect(test.replaceAll('\u00a0', ' ')).not.toContain(number)
  expect(page).toContain('illuminant and observer not recorded')
  expect(page).not.toContain('D65')
})

test('what was recorded of the washes and of the readings is what the sheet prints', async () => {
  const { client, id } = await washed()
  const vessels = await washVessels(client, id)
  expect(vessels.length).toBe(24)
  for (const [i, vessel] of vessels.entries()) {
    const { items } = (await client.get(`/api/vessels/${vessel.id}/exposures`)).body
    await made(client, `/api/vessels/${vessel.id}/exposures`, {
      protocol: 'W2',
      cycles: 3,
      conditions: { washTemp: i === 0 ? 36 : 38, ...(i < 20 ? { detergent: 2 } : {}) },
      supersedesId: items[0].id,
      reason: 'the thermometer was read',
    })
  }
  const sittings: Stored[] = (await client.get(`/api/sittings?trialId=${id}`)).body.items
  for (const { id: sitting, version } of sittings)
    await changedRecord(client, `/api/sittings/${sitting}`, version, { illuminant: 'D50', observer: '2' })
  const { test, page } = await frozen(client, id)
  expect(test).toBe(
    'Three warm hand washes. As done: temperature 36–38 °C, detergent 2 g/L (in 20 of 24); time, water not recorded. A home test near protocol W2 of this tool.',
  )
  expect(page).toContain('(D50, 2°; means of 4 skeins)')
})

test('a condition of the whole wash day counts for each of its jars', async () => {
  const { client, id } = await washed()
  const sessions: Stored[] = (await client.get(`/api/trials/${id}/sessions`)).body.items
  const wash = sessions.find(({ kind }) => kind === 'wash')
  await changedRecord(client, `/api/sessions/${wash?.id}`, wash?.version ?? 0, {
    conditions: { washTemp: 37, washTime: 20, washLiquor: 40, detergent: 1 },
  })
  const { test } = await frozen(client, id)
  expect(test).toContain(
    'As done: temperature 37 °C, time 20 min, water 40 mL/g, detergent 1 g/L. A home test',
  )
})
