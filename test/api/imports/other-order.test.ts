import { expect, test } from 'vitest'
import { readDarkTwin, startLadder, storyText } from '#test/support/a-ladder.ts'
import { made } from '#test/support/a-trial.ts'
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

const table = { text: storyText('steam-time-ladder.csv'), between: { W2: 3 }, ownVessel: true }

/** The ladder with its places drawn by another seed than the one that the table was dyed by. */
async function drawnOtherwise(skeinsPerVessel = 1) {
  const client = clientOf(await emptyDatabase())
  const id = await startLadder(client)
  await made(client, `/api/trials/${id}/plan/draw`, {
    sessions: 4,
    vesselsPerLevel: 1,
    skeinsPerVessel,
    seed: 11,
  })
  return { client, id }
}

type Drawn = { factorId: string; levelId: string; drawnLevelId: string | null }

test('a table that says other levels than were drawn is asked about once, and nothing is stored before', async () => {
  const { client, id } = await drawnOtherwise()
  const check = await client.post(`/api/trials/${id}/table?check=true`, table)
  expect(check.body).toMatchObject({ faults: [], atFault: 0 })
  expect(check.body.asks).toEqual([
    {
      key: 'otherOrder',
      question: expect.stringMatching(
        /^\d+ rows say another level than was drawn\. Was it done in another order than drawn\?$/,
      ),
      needed: true,
    },
  ])
  const kept = await client.post(`/api/trials/${id}/table`, table)
  expect(kept).toMatchObject({ status: 422, body: { errors: [{ pointer: '#/otherOrder' }] } })
})

test('kept as the table says it answers 35 minutes, and says that the work differed from the plan', async () => {
  const { client, id } = await drawnOtherwise()
  const before = await client.get(`/api/trials/${id}/treatments`)
  const kept = await client.post(`/api/trials/${id}/table`, { ...table, otherOrder: true })
  expect(kept).toMatchObject({ status: 201, body: { kept: 24, makes: { skeins: 0 } } })
  await readDarkTwin(client, id)
  const { body: finding } = await client.get(`/api/trials/${id}/findings`)
  expect(finding.verdict).toMatchObject({
    answer: 'holds',
    headline: '35 minutes of steam is enough (dates not recorded).',
  })
  expect(finding.counts).toMatchObject({ skeins: 24, vessels: 24, sessions: 4 })
  const treatments: Drawn[] = (await client.get(`/api/trials/${id}/treatments`)).body.items
  const otherwise = treatments.filter((it) => it.drawnLevelId !== null)
  expect(otherwise.length).toBeGreaterThan(0)
  // What had been drawn is kept: with it the plan reads as before.
  expect(treatments.map((it) => it.drawnLevelId ?? it.levelId).sort()).toEqual(
    before.body.items.map((it: Drawn) => it.levelId).sort(),
  )
  expect(finding.cautions).toContainEqual({
    kind: 'doubt',
    title: 'The work differed from the plan',
    text: `${otherwise.length} of 24 skeins were given another level than was drawn for their places. They are judged by what was done; the lot did not choose their places.`,
  })
  const sheet = await client.get(`/sheets/trials/${id}`)
  expect(sheet.body).toContain('The work differed from the plan.')
})

test('with “no” the rows are at fault, and no level is suggested to write over them', async () => {
  const { client, id } = await drawnOtherwise()
  const { body } = await client.post(`/api/trials/${id}/table?check=true`, { ...table, otherOrder: false })
  expect(body.faultsInAll).toBeGreaterThan(0)
  expect(body.faults.every((it: { suggestion: unknown }) => it.suggestion === null)).toBe(true)
})

test('of two skeins in one packet the one that had another level is given its own, and the other keeps the packet’s', async () => {
  const { client, id } = await drawnOtherwise(2)
  const before = levelsIn((await client.get(`/api/trials/${id}/table`)).body)
  const [code = '', drawn] = [...before][0] ?? []
  const beside = `${code.slice(0, -1)}b`
  expect([code.slice(-1), before.get(beside)]).toEqual(['a', drawn])
  const other = drawn === '75' ? '50' : '75'
  const rows = { text: `skein,steam,felting\n${code},${other},1`, otherOrder: true }
  expect((await client.post(`/api/trials/${id}/table`, rows)).status).toBe(201)
  const after = levelsIn((await client.get(`/api/trials/${id}/table`)).body)
  expect([after.get(code), after.get(beside)]).toEqual([other, drawn])
})

/** The steam time of each skein, as the table of the trial says it. */
function levelsIn(csv: string): ReadonlyMap<string, string> {
  const [head = [], ...rows] = csv.split('\r\n').map((line) => line.split(','))
  const at = (name: RegExp) => head.findIndex((it) => name.test(it))
  return new Map(rows.map((cells) => [cells[at(/^skein/)] ?? '', cells[at(/^steam/)] ?? '']))
}

test('the same table once more has nothing to ask', async () => {
  const { client, id } = await drawnOtherwise()
  await client.post(`/api/trials/${id}/table`, { ...table, otherOrder: true })
  const { body } = await client.post(`/api/trials/${id}/table?check=true`, table)
  expect(body.asks).toEqual([])
  expect(body.faults).toEqual([])
})
