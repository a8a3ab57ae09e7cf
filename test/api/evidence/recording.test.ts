import { createHash } from 'node:crypto'
import { sql } from 'kysely'
import { expect, test } from 'vitest'
import { readDarkTwin, startLadder, storyText } from '#test/support/a-ladder.ts'
import { changed, made } from '#test/support/a-trial.ts'
import { type Client, clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

/** The steam ladder of four sessions, dated after its rule was locked: 35 minutes is enough. */
async function ladder({ plannedSessions = 4, locked = true } = {}) {
  const db = await emptyDatabase()
  const client = clientOf(db)
  const id = await startLadder(client, { plannedSessions, locked })
  const text = storyText('steam-time-ladder.csv')
  await made(client, `/api/trials/${id}/table`, { text, between: { W2: 3 }, ownVessel: true })
  await readDarkTwin(client, id)
  const heldOn = new Date().toISOString().slice(0, 10)
  for (const { id: session, version } of (await client.get(`/api/trials/${id}/sessions?limit=100`)).body
    .items)
    await changed(client, `/api/sessions/${session}`, version, { heldOn })
  return {
    db,
    client,
    id,
    verdicts: `/api/trials/${id}/verdicts`,
    sheets: `/api/trials/${id}/evidence-sheets`,
  }
}

/** Corrects the staining of a skein at 35 minutes to 2, which is under the limit of 4. */
async function stained(client: Client, id: string): Promise<void> {
  const { body: finding } = await client.get(`/api/trials/${id}/findings`)
  const skein = finding.skeins.find(({ levelId }: { levelId: string }) => levelId === finding.verdict.levelId)
  const { body } = await client.get(`/api/trials/${id}/outcomes?limit=200`)
  const graded = body.items.find(
    (it: { kind: string; skeinId: string }) => it.kind === 'staining' && it.skeinId === skein.id,
  )
  await made(client, `/api/trials/${id}/outcomes`, {
    skeinId: skein.id,
    ...(graded.sittingId === null ? {} : { sittingId: graded.sittingId }),
    kind: 'staining',
    fibre: graded.fibre,
    wear: graded.wear,
    text: '2',
    supersedesId: graded.id,
    reason: 'the strip was read in lamp light',
  })
}

/** Of the text with sorted keys, written here a second time. */
function sha256Of(body: unknown): string {
  const text = (value: unknown): string => {
    if (Array.isArray(value)) return `[${value.map(text).join(',')}]`
    if (typeof value !== 'object' || value === null) return JSON.stringify(value)
    const pairs = Object.entries(value).map(([key, it]) => `${JSON.stringify(key)}:${text(it)}`)
    return `{${pairs.sort().join(',')}}`
  }
  return createHash('sha256').update(text(body)).digest('hex')
}

const refusal = (answer: { status: number; body: { detail: string } }) => [answer.status, answer.body.detail]

test('without readings there is nothing to record and nothing to publish', async () => {
  const client = clientOf(await emptyDatabase())
  const id = await startLadder(client)
  expect((await client.post(`/api/trials/${id}/verdicts`)).status).toBe(422)
  const sheet = await client.post(`/api/trials/${id}/evidence-sheets`)
  expect(sheet.status).toBe(422)
  expect(sheet.body.detail).toMatch(/^A sheet is made from a verdict\. /)
})

test('under a rule that is not locked nothing is recorded and nothing is published', async () => {
  const { client, verdicts, sheets } = await ladder({ locked: false })
  expect(refusal(await client.post(verdicts))).toEqual([
    422,
    'No rule was locked: this is not a claim. Lock the rule first.',
  ])
  expect(refusal(await client.post(sheets))).toEqual([
    422,
    'No rule was locked: this is not a claim. Lock the rule first.',
  ])
})

test('before the planned sessions are in no verdict is recorded', async () => {
  const { client, verdicts } = await ladder({ plannedSessions: 5 })
  const early = await client.post(verdicts)
  expect(refusal(early)).toEqual([422, 'The verdict is recorded when the planned sessions are in.'])
  expect(early.body.errors).toEqual([{ pointer: '#', detail: '4 of 5 sessions.' }])
})

test('a part that the trial does not have is no part of a verdict or a sheet, nor is a trial that is not there', async () => {
  const { client, verdicts, sheets } = await ladder()
  const within = '00000000-0000-4000-8000-000000000000'
  for (const path of [verdicts, sheets]) {
    expect((await client.post(path, { within })).status).toBe(404)
    expect((await client.post(path.replace(/trials\/[^/]+/, `trials/${within}`))).status).toBe(404)
    expect((await client.get(path.replace(/trials\/[^/]+/, `trials/${within}`))).status).toBe(404)
  }
})

test('a sheet comes from a recorded verdict, and recording or publishing again gives back the one that is there', async () => {
  const { client, verdicts, sheets } = await ladder()
  expect(refusal(await client.post(sheets))).toEqual([
    422,
    'A sheet is published from a recorded verdict. Record the verdict first.',
  ])
  const verdict = await client.post(verdicts)
  expect(verdict).toMatchObject({
    status: 201,
    body: { answer: 'holds', stratum: '', withinLevelId: null, mark: null },
  })
  expect(await client.post(verdicts)).toMatchObject({
    status: 200,
    body: { id: verdict.body.id, version: 1 },
  })
  const sheet = await client.post(sheets)
  expect(sheet).toMatchObject({
    status: 201,
    body: { judgedBy: 'this version', checksumMatches: true, superseded: false, mark: null },
  })
  expect(await client.post(sheets)).toMatchObject({ status: 200, body: { id: sheet.body.id } })
  expect((await client.get(verdicts)).body.items).toEqual([verdict.body])
  expect((await client.get(sheets)).body.items).toEqual([sheet.body])
})

test('after a correction the recorded verdict is not published, and a published sheet is superseded, its words unchanged', async () => {
  const { client, id, verdicts, sheets } = await ladder()
  const verdict = await made(client, verdicts, {})
  const sheet = await made(client, sheets, {})
  await stained(client, id)
  const { body: finding } = await client.get(`/api/trials/${id}/findings`)
  expect(finding.verdict.headline).not.toBe(verdict.headline)
  const late = await client.post(sheets)
  expect(late.status).toBe(422)
  expect(late.body.detail).toContain(`Recorded: “${verdict.headline}” Today: “${finding.verdict.headline}”`)
  const mark = `Superseded: a correction came after it. Today: “${finding.verdict.headline}”`
  const today = { answer: finding.verdict.answer, headline: finding.verdict.headline }
  expect((await client.get(verdicts)).body.items[0]).toEqual({ ...verdict, superseded: true, mark, today })
  expect((await client.get(sheets)).body.items[0]).toEqual({ ...sheet, superseded: true, mark, today })
  const { body: page } = await client.get(sheet.path)
  expect(page).toContain(`<h1>${sheet.headline}</h1>`)
  expect(page).toMatch(
    /<aside class="standing"[^>]*><p class="strong">Superseded: a correction came after it\. /,
  )
  expect(page.indexOf('class="standing"')).toBeLessThan(page.indexOf('<main>'))
})

test('the checksum of a sheet is that of its stored body, and a body that is not the published one is said to be so', async () => {
  const { db, client, sheets, verdicts } = await ladder()
  await made(client, verdicts, {})
  const sheet = await made(client, sheets, {})
  const row = await db.selectFrom('evidenceSheet').selectAll().executeTakeFirstOrThrow()
  expect(sha256Of(row.body)).toBe(sheet.sha256)
  expect((await client.get(sheet.path)).body).not.toContain('checksum does not match')
  // Only one who reaches the database itself can change a body, by copying the row.
  const body = JSON.stringify({
    ...row.body,
    sheet: { ...row.body.sheet, headline: '10 minutes is enough.' },
  })
  const forged = await db
    .insertInto('evidenceSheet')
    .values({ trialIds: row.trialIds, body, sha256: row.sha256, step: row.step })
    .returning('id')
    .executeTakeFirstOrThrow()
  const { items } = (await client.get(sheets)).body
  const shown = items.map(({ id, checksumMatches }: { id: string; checksumMatches: boolean }) => [
    id,
    checksumMatches,
  ])
  expect(new Map(shown)).toEqual(
    new Map([
      [forged.id, false],
      [sheet.id, true],
    ]),
  )
  const { body: page } = await client.get(`/sheets/${forged.id}`)
  expect(page).toContain('Its checksum does not match')
})

test('what was recorded or published is not changed, not even in the database', async () => {
  const { db, client, sheets, verdicts } = await ladder()
  await made(client, verdicts, {})
  await made(client, sheets, {})
  for (const table of ['verdict', 'evidence_sheet'])
    await expect(
      sql`update ${sql.table(table)} set body = jsonb_set(body, '{forged}', 'true')`.execute(db),
    ).rejects.toThrow('what was declared or frozen is not changed')
})

test('another look supersedes the verdict and the sheet before it, and each sheet lists the others of its trial', async () => {
  const { client, id, sheets, verdicts } = await ladder()
  await made(client, verdicts, {})
  const first = await made(client, sheets, {})
  const { body } = await client.get(`/api/trials/${id}/rules`)
  const { conditions } = body.items[0]
  await made(client, `/api/trials/${id}/rules`, { conditions, plannedSessions: 4, reason: 'thought again' })
  await client.post(`/api/trials/${id}/rules/2/lock`)
  const look = await made(client, verdicts, {})
  expect(look).toMatchObject({ look: 2, superseded: false })
  const second = await made(client, sheets, {})
  const verdict = (await client.get(verdicts)).body.items[0]
  expect([verdict.look, verdict.superseded]).toEqual([1, true])
  const { items } = (await client.get(sheets)).body
  expect(items.map((it: { id: string; superseded: boolean }) => [it.id, it.superseded])).toEqual([
    [second.id, false],
    [first.id, true],
  ])
  expect((await client.get(first.path)).body).toContain(`<a href="${second.path}">`)
  expect((await client.get(second.path)).body).toContain(`<a href="${first.path}">`)
})
