import { expect, test } from 'vitest'
import { startLadder, storyText } from '#test/support/a-ladder.ts'
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'
import { mistypedLadder } from '#test/support/mistyped-ladder.ts'

async function aLadder() {
  const db = await emptyDatabase()
  const client = clientOf(db)
  const id = await startLadder(client)
  const table = `/api/trials/${id}/table`
  const count = async (noun: string) =>
    (await client.get(`/api/trials/${id}/${noun}?limit=500`)).body.items.length
  return { db, client, id, table, count }
}
const between = { W2: 3 }

test('with one bad row nothing of a table is kept', async () => {
  const { client, table, count } = await aLadder()
  const answer = await client.post(table, { text: mistypedLadder(), between })
  expect(answer.status).toBe(422)
  expect(answer.body.detail).toBe('4 of 24 rows cannot be kept as they are; nothing was stored.')
  expect(await count('skeins')).toBe(0)
})

test('by choice the ready rows are kept, and those left out are listed with their first fault or doubt', async () => {
  const { client, table, count } = await aLadder()
  const { body } = await client.post(table, { text: mistypedLadder(), between, keep: 'ready' })
  expect(body).toMatchObject({ rows: 24, kept: 19 })
  expect(body.leftOut.map((fault: { row: number; heading: string }) => [fault.row, fault.heading])).toEqual([
    [9, 'L1'],
    [12, 'rinses_to_4'],
    [16, 'rack_place'],
    [17, 'rack_place'],
    [20, 'stain_white_wool'],
  ])
  expect([await count('skeins'), await count('readings')]).toEqual([19, 38])
})

test('nothing is kept before it is said what lies between before and after', async () => {
  const { client, table } = await aLadder()
  const { status, body } = await client.post(table, { text: storyText('steam-time-ladder.csv') })
  expect([status, body.errors[0].pointer]).toEqual([422, '#/between'])
})

test('the same import under its id is kept once, however often it is sent', async () => {
  const { client, table, count } = await aLadder()
  const sent = { id: crypto.randomUUID(), text: storyText('steam-time-ladder.csv'), between }
  const first = await client.post(table, sent)
  const again = await client.post(table, sent)
  expect([first.body.kept, again.body.kept, again.body.importId]).toEqual([24, 24, sent.id])
  expect(await count('readings')).toBe(48)
})

test('the same table under no id is said to have been measured before', async () => {
  const { client, table } = await aLadder()
  const sent = { text: storyText('steam-time-ladder.csv'), between }
  await client.post(table, sent)
  const { body } = await client.post(`${table}?check=true`, sent)
  expect(body.notes[0].title).toBe('24 of these skeins have readings')
})

test('two tables that do not name their skeins are not taken for one', async () => {
  const { client, table, count } = await aLadder()
  for (const pH of ['4', '5']) await client.post(table, { text: `steam,pH\n20,${pH}\n35,${pH}` })
  expect(await count('skeins')).toBe(4)
})

test('the rows of a drawn plan go to its skeins, and another level than was drawn is asked about', async () => {
  const { client, id, table, count } = await aLadder()
  await client.post(`/api/trials/${id}/plan/draw`, {
    sessions: 1,
    vesselsPerLevel: 1,
    skeinsPerVessel: 1,
    seed: 7,
  })
  const csv: string = (await client.get(table)).body
  const [head = '', ...lines] = csv.trim().split(/\r?\n/)
  const rows = lines.map((line) => line.split(','))
  const cell = (row: string[] | undefined, name: string) =>
    row?.[head.split(',').findIndex((it) => it.startsWith(name))] ?? ''
  const [first] = rows
  const [session, place, given] = ['session', 'place', 'steamTime'].map((name) => cell(first, name))
  const other = rows.map((row) => cell(row, 'steamTime')).find((level) => level !== given)
  const skeins = await count('skeins')

  expect(rows.length).toBeGreaterThan(5)
  const wrong = await client.post(table, { text: `session,place,steam,pH\n${session},${place},${other},4` })
  expect([wrong.status, wrong.body.errors[0].pointer]).toEqual([422, '#/otherOrder'])
  const right = await client.post(table, {
    text: `session,place,steam,felting\n${session},${place},${given},2`,
  })
  expect(right.status).toBe(201)
  expect(right.body.makes).toMatchObject({ skeins: 0, outcomes: 1 })
  expect(await count('skeins')).toBe(skeins)
  const { items } = (await client.get(`/api/trials/${id}/skeins`)).body
  const code = cell(first, 'skein')
  expect(items.find((it: { code: string }) => it.code === code).status).toBe('done')
})

test('a unit of a heading counts in, and out again', async () => {
  const { client, table } = await aLadder()
  const text = 'skein,steam [h],weight [kg],felting\r\nA,1.25,0.05,2\r\n'
  const trial = await client.post('/api/trials', { title: 'Hours', question: 'Does an hour count?' })
  const own = table.replace(/trials\/[^/]+/, `trials/${trial.body.id}`)
  await client.post(own, { text })
  const factors = await client.get(`/api/trials/${trial.body.id}/factors`)
  expect(factors.body.items[0].levels[0].value).toBe(75)
  expect((await client.get(own)).body).toBe(text)
})

test('what a spreadsheet would take for a formula goes out harmless and comes in as it was', async () => {
  const { client, table, id } = await aLadder()
  await client.post(table, { text: 'skein,steam,felting\n=1+1,20,2' })
  const csv: string = (await client.get(table)).body
  expect(csv.split('\r\n')[1]).toBe("'=1+1,20,2")
  const { items } = (await client.get(`/api/trials/${id}/skeins`)).body
  expect(items[0].code).toBe('=1+1')
  const again = await client.post(`${table}?check=true`, { text: csv })
  expect(again.body.notes[0].title).toBe('Skein =1+1 has readings')
})

test('a CSV file may be sent as it is, with the answers in the address', async () => {
  const { client, table, count } = await aLadder()
  const csv = storyText('steam-time-ladder.csv').replaceAll(',', ';').replaceAll('.', ',')
  const { status } = await client.ask('POST', `${table}?between=W2:3&ownVessel=true`, csv, {
    'content-type': 'text/csv',
  })
  expect([status, await count('readings')]).toEqual([201, 48])
})

test('how far an import is, can be asked until a minute after its end', async () => {
  const { client, table } = await aLadder()
  const id = crypto.randomUUID()
  expect((await client.get(`${table}/${id}/progress`)).status).toBe(404)
  await client.post(table, { id, text: storyText('steam-time-ladder.csv'), between })
  const { body } = await client.get(`${table}/${id}/progress`)
  expect(body).toMatchObject({ stage: 'keeping', of: 24, ended: true })
})
