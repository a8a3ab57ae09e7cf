import { expect, test } from 'vitest'
import { readDarkTwin, startLadder, storyText } from '#test/support/a-ladder.ts'
import { cellsOf, changed as changedRows, textOf } from '#test/support/a-table.ts'
import { changed, made } from '#test/support/a-trial.ts'
import { type Client, clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

type Row = {
  id: string
  version: number
  levelId: string
  vesselId: string | null
  code: string
  role: string
}
type Level = { id: string; label: string }

/** The steam ladder, where the skeins of 50 minutes lost 6 L* more than in the story: 50 minutes is too short. */
async function ladder() {
  const client = clientOf(await emptyDatabase())
  const id = await startLadder(client)
  const story = changedRows(cellsOf(storyText('steam-time-ladder.csv')), (row) =>
    row.steam_min === '50' ? { ...row, L1: String(Number(row.L1) + 6) } : row,
  )
  await made(client, `/api/trials/${id}/table`, { text: textOf(story), between: { W2: 3 }, ownVessel: true })
  await readDarkTwin(client, id)
  const { body } = await client.get(`/api/trials/${id}/factors`)
  const levels: Level[] = body.items?.[0]?.levels ?? body[0].levels
  return { client, id, level: (label: string) => levels.find((it) => it.label === label)?.id ?? '' }
}

const items = async (client: Client, path: string): Promise<Row[]> =>
  (await client.get(`${path}?limit=500`)).body.items

/** Takes the levels of some pots back and gives them the other of two, as one who knows the readings could. */
async function swapLevels(client: Client, id: string, [one, other]: readonly [string, string]) {
  for (const { id: treatment, version, levelId, vesselId } of await items(
    client,
    `/api/trials/${id}/treatments`,
  )) {
    if (levelId !== one && levelId !== other) continue
    const gone = await client.ask('DELETE', `/api/treatments/${treatment}`, undefined, {
      'if-match': `"${version}"`,
    })
    expect(gone.status).toBe(204)
    await made(client, `/api/trials/${id}/treatments`, { levelId: levelId === one ? other : one, vesselId })
  }
}

const before = '50 minutes of steam is too short (dates not recorded).'

test('levels given anew after reading do not turn a “too short” into an “enough”', async () => {
  const { client, id, level } = await ladder()
  const first = (await client.get(`/api/trials/${id}/findings`)).body
  expect(first.verdict).toMatchObject({ answer: 'does-not-hold', headline: before })
  await swapLevels(client, id, [level('35'), level('50')])
  const { body } = await client.get(`/api/trials/${id}/findings`)
  expect(body.verdict).toMatchObject({
    answer: 'does-not-hold',
    headline: before.replace(/\.$/, ' (without the changes made after reading).'),
  })
  expect(body.verdict.lead).toMatch(/^As the record stands now: “50 minutes of steam is enough/)
  const gate = body.gates.find((it: { gate: string }) => it.gate === 'journal')
  expect(gate).toMatchObject({ open: false })
  expect(gate.says).toMatch(/^16 changes of what is judged were made after the first reading\./)
})

test('the sheet lists what was changed after reading', async () => {
  const { client, id, level } = await ladder()
  await swapLevels(client, id, [level('35'), level('50')])
  const { body } = await client.get(`/api/trials/${id}/evidence-sheets/draft`)
  expect(body.sheet.changes).toHaveLength(16)
  expect(body.sheet.changes[0]).toMatch(/: treatment removed, no reason given\.$/)
  const page = await client.get(body.path)
  expect(page.body).toContain('<dt>Changed after reading</dt>')
})

test('a skein that is no longer “treated” after its reading is said, and its answer without that stands beside', async () => {
  const { client, id } = await ladder()
  const skeins = await items(client, `/api/trials/${id}/skeins`)
  const { body: finding } = await client.get(`/api/trials/${id}/findings`)
  const short = new Set(
    finding.skeins
      .filter((it: { levelId: string }) => it.levelId === finding.verdict.subjectId)
      .map((it: { id: string }) => it.id),
  )
  for (const { id: skein, version } of skeins.filter((it) => short.has(it.id)))
    await changed(client, `/api/skeins/${skein}`, version, { role: 'blank' })
  const { body } = await client.get(`/api/trials/${id}/findings`)
  expect(body.verdict).toMatchObject({ answer: 'does-not-hold' })
  expect(body.verdict.headline).toContain('without the changes made after reading')
})

test('the next day’s pots, added after the first reading, are work and no change', async () => {
  const { client, id } = await ladder()
  const session = await made(client, `/api/trials/${id}/sessions`, { label: 'day 5' })
  await made(client, `/api/sessions/${session.id}/vessels`, {
    stage: 'set',
    kind: 'packet',
    label: 'packet 1',
  })
  const { body } = await client.get(`/api/trials/${id}/findings`)
  expect(body.verdict.headline).toBe(before)
  expect(body.gates.find((it: { gate: string }) => it.gate === 'journal')).toMatchObject({ open: true })
})
