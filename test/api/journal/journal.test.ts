import { sql } from 'kysely'
import { expect, test } from 'vitest'
import { begunTrials } from '#db/journal.ts'
import { startLadder, storyText } from '#test/support/a-ladder.ts'
import { aTrial, changed, made, trialIn } from '#test/support/a-trial.ts'
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

async function aReadTrial() {
  const trial = await aTrial()
  const session = await trial.session()
  const vessel = await trial.vessel(session.id)
  const skein = await trial.skein()
  const placement = await trial.place(vessel.id, skein.id)
  const at = `/api/trials/${trial.id}`
  const treatment = await made(trial.client, `${at}/treatments`, {
    levelId: trial.short,
    vesselId: vessel.id,
  })
  const sitting = await trial.sitting()
  const reading = await trial.reading(skein.id, sitting.id, [50, 1, 2])
  const journal = async (query = '') => (await trial.client.get(`${at}/journal${query}`)).body
  return {
    ...trial,
    write: trial,
    at,
    session,
    vessel,
    skein,
    placement,
    treatment,
    sitting,
    reading,
    journal,
  }
}

test('a change says who made it, why and when, with the record before and after', async () => {
  const trial = await aReadTrial()
  const before = (await trial.client.get(`/api/skeins/${trial.skein.id}`)).body
  const answer = await trial.client.ask(
    'PATCH',
    `/api/skeins/${trial.skein.id}`,
    { role: 'blank' },
    {
      'if-match': '"1"',
      'x-who': 'A.',
      'x-reason': encodeURIComponent('a “blank”, mixed up'),
    },
  )
  const { doubts: _doubts, ...after } = answer.body
  const { items, from } = await trial.journal()
  expect(items).toMatchObject([
    { who: 'A.', why: 'a “blank”, mixed up', noun: 'skein', recordId: trial.skein.id, action: 'changed' },
  ])
  expect(items[0]).toMatchObject({ before, after, skeinIds: [trial.skein.id] })
  expect(Date.parse(items[0].at)).toBeGreaterThanOrEqual(Date.parse(from))
})

test('words, and a vessel that is done, change nothing that is judged', async () => {
  const trial = await aReadTrial()
  await changed(trial.client, `/api/skeins/${trial.skein.id}`, 1, { code: 'B1' })
  await changed(trial.client, `/api/sessions/${trial.session.id}`, 1, { label: 'first', note: 'rain' })
  await changed(trial.client, `/api/vessels/${trial.vessel.id}`, 1, { status: 'done' })
  await changed(trial.client, trial.at, 1, { title: 'Steam again' })
  expect((await trial.journal()).items).toEqual([])
})

test('a correction stands with its reason, and with both records', async () => {
  const trial = await aReadTrial()
  const right = await trial.write.reading(trial.skein.id, trial.sitting.id, [60, 1, 2], {
    supersedesId: trial.reading.id,
    reason: 'another skein',
  })
  expect((await trial.journal()).items).toMatchObject([
    {
      ...{ noun: 'reading', recordId: trial.reading.id, action: 'corrected', why: 'another skein' },
      before: { id: trial.reading.id, meanL: 50, superseded: false },
      after: { id: right.id, meanL: 60, supersedesId: trial.reading.id },
    },
  ])
})

test('the same thing sent twice stands in the journal once', async () => {
  const trial = await aReadTrial()
  const body = { id: '00000000-0000-4000-8000-000000000001', code: 'A2' }
  expect((await trial.client.post(`${trial.at}/skeins`, body)).status).toBe(201)
  expect((await trial.client.post(`${trial.at}/skeins`, body)).status).toBe(200)
  expect((await trial.journal()).items).toHaveLength(1)
})

test('a lost vessel stands in the journal with the skeins that were lost and found with it', async () => {
  const trial = await aReadTrial()
  await changed(trial.client, `/api/vessels/${trial.vessel.id}`, 1, {
    status: 'lost',
    lostReason: 'boiled dry',
  })
  await changed(trial.client, `/api/vessels/${trial.vessel.id}`, 2, { status: 'done' })
  const { items } = await trial.journal()
  expect(items.map((it: { noun: string }) => it.noun)).toEqual(['vessel', 'skein', 'vessel', 'skein'])
  expect(items[1]).toMatchObject({
    before: { status: 'planned', lostReason: null, version: 1 },
    after: { status: 'lost', lostReason: 'packet 1: boiled dry', version: 2 },
  })
  expect(items[3]).toMatchObject({ before: { status: 'lost' }, after: { status: 'done', lostReason: null } })
})

test('what goes with a vessel stands in the journal before it', async () => {
  const trial = await aReadTrial()
  const answer = await trial.client.ask('DELETE', `/api/vessels/${trial.vessel.id}`, undefined, {
    'if-match': '1',
  })
  expect(answer.status).toBe(204)
  const { items } = await trial.journal()
  expect(items.map((it: { noun: string; recordId: string }) => [it.noun, it.recordId])).toEqual([
    ['treatment', trial.treatment.id],
    ['placement', trial.placement.id],
    ['vessel', trial.vessel.id],
  ])
})

test('a change of what trials share stands in the journal of each trial whose skeins it touches', async () => {
  const one = await aReadTrial()
  const two = await trialIn(one.db, one.client)
  const three = await trialIn(one.db, one.client)
  const day = await made(one.client, '/api/sessions', { label: 'wash day', kind: 'wash' })
  const jar = await made(one.client, `/api/sessions/${day.id}/vessels`, {
    stage: 'wash',
    kind: 'jar',
    label: 'j',
  })
  const skein = await two.skein()
  const unread = await three.skein()
  await two.reading(skein.id, (await two.sitting()).id, [50, 1, 2])
  for (const id of [one.skein.id, skein.id, unread.id]) await one.place(jar.id, id)
  await changed(one.client, `/api/vessels/${jar.id}`, 1, { equipment: 'jar 2' })
  const last = async (id: string) => (await one.client.get(`/api/trials/${id}/journal`)).body.items.at(-1)
  expect(await last(one.id)).toMatchObject({ noun: 'vessel', recordId: jar.id, skeinIds: [one.skein.id] })
  expect(await last(two.id)).toMatchObject({ noun: 'vessel', recordId: jar.id, skeinIds: [skein.id] })
  expect(await last(three.id)).toBeUndefined()
})

test('the block of a trial stands in its journal', async () => {
  const trial = await aReadTrial()
  await changed(trial.client, trial.at, 1, { block: 'vessel' })
  expect((await trial.journal()).items).toMatchObject([
    { noun: 'trial', recordId: trial.id, before: { block: 'session' }, after: { block: 'vessel' } },
  ])
})

test('sessions that are drawn after a reading stand in the journal, with their pieces', async () => {
  const trial = await aTrial()
  const draw = (sessions: number) =>
    trial.client.post(
      `/api/trials/${trial.id}/plan/draw`,
      { sessions, vesselsPerLevel: 1, skeinsPerVessel: 1, twins: false },
      { 'x-reason': 'one more' },
    )
  expect((await draw(1)).status).toBe(201)
  const journal = async () => (await trial.client.get(`/api/trials/${trial.id}/journal`)).body.items
  const skeins = (await trial.client.get(`/api/trials/${trial.id}/skeins`)).body.items
  await trial.reading(skeins[0].id, (await trial.sitting()).id, [50, 1, 2])
  expect(await journal()).toEqual([])
  expect((await draw(2)).status).toBe(201)
  expect(
    (await journal()).map((it: { noun: string; action: string; why: string }) => [
      it.noun,
      it.action,
      it.why,
    ]),
  ).toEqual([
    ['session', 'added', 'one more'],
    ['skein', 'added', 'one more'],
    ['skein', 'added', 'one more'],
  ])
})

test('a table that loses a drawn piece after a reading stands in the journal; the first table does not', async () => {
  const trial = await aTrial()
  const keep = (text: string, more: object = {}) =>
    trial.client.post(`/api/trials/${trial.id}/table`, { text, between: { W2: 3 }, ownVessel: true, ...more })
  const first = await keep('session,skein,steamTime,L0,a0,b0\n1,A,10,50,1,2\n1,B,75,51,1,2\n')
  expect(first.body).toMatchObject({ kept: 2 })
  const journal = async () => (await trial.client.get(`/api/trials/${trial.id}/journal`)).body.items
  expect(await journal()).toEqual([])
  const drawn = await trial.skein({ code: 'C' })
  const second = await keep('session,skein,steamTime,L0,a0,b0,lost because\n2,C,10,,,,fell in the sink\n')
  expect(second.body).toMatchObject({ kept: 1 })
  expect(await journal()).toEqual(
    expect.arrayContaining([
      expect.objectContaining({ noun: 'skein', recordId: drawn.id, action: 'changed' }),
    ]),
  )
})

test('the journal is read in pages, oldest first', async () => {
  const trial = await aReadTrial()
  for (const code of ['B', 'C', 'D']) await trial.write.skein({ code })
  const first = await trial.journal('?limit=2')
  const second = await trial.journal(`?limit=2&after=${first.next}`)
  const codes = [...first.items, ...second.items].map((it: { after: { code: string } }) => it.after.code)
  expect(codes).toEqual(['B', 'C', 'D'])
  expect(second.next).toBeNull()
})

test('the journal of a new trial is kept from its beginning', async () => {
  const trial = await aReadTrial()
  const { createdAt } = (await trial.client.get(trial.at)).body
  expect((await trial.journal()).from).toBe(createdAt)
})

test('what stands in the journal is not changed', async () => {
  const trial = await aReadTrial()
  await trial.write.skein({ code: 'B' })
  await expect(sql`update journal set why = 'other'`.execute(trial.db)).rejects.toThrow('journal')
})

test('a trial has begun with its first current reading or outcome, of a skein or of a vessel', async () => {
  const trial = await aTrial()
  const begun = async () => (await begunTrials(trial.db, [trial.id])).has(trial.id)
  const vessel = await trial.vessel((await trial.session()).id)
  expect(await begun()).toBe(false)
  await trial.outcome({ kind: 'pH', vesselId: vessel.id, value: 4 })
  expect(await begun()).toBe(true)
})

test('levels that a table says were given otherwise than drawn stand in the journal, after a reading', async () => {
  const client = clientOf(await emptyDatabase())
  const id = await startLadder(client)
  const at = `/api/trials/${id}`
  await made(client, `${at}/plan/draw`, { sessions: 4, vesselsPerLevel: 1, skeinsPerVessel: 1, seed: 11 })
  const twin = await made(client, `${at}/skeins`, { code: 'read first', role: 'twin' })
  const sitting = await made(client, '/api/sittings', { trialId: id, method: 'instrument', label: 'first' })
  await made(client, `${at}/readings`, {
    ...{ skeinId: twin.id, sittingId: sitting.id, wear: {} },
    spots: [{ l: 50, a: 1, b: 2 }],
  })
  const text = storyText('steam-time-ladder.csv')
  const table = { text, between: { W2: 3 }, ownVessel: true, otherOrder: true }
  expect((await client.post(`${at}/table`, table, { 'x-who': 'A.' })).status).toBe(201)
  const treatments = (await client.get(`${at}/treatments?limit=500`)).body.items
  const otherwise = treatments.filter((it: { drawnLevelId: string | null }) => it.drawnLevelId !== null)
  const { items } = (await client.get(`${at}/journal?limit=500`)).body
  const given = items.filter((it: { noun: string }) => it.noun === 'treatment')
  expect(otherwise.length).toBeGreaterThan(0)
  expect(given.map((it: { after: object }) => it.after)).toEqual(expect.arrayContaining(otherwise))
  expect(given).toHaveLength(otherwise.length)
  for (const { before, after, who } of given) {
    expect(who).toBe('A.')
    expect(before).toMatchObject({ id: after.id, levelId: after.drawnLevelId, drawnLevelId: null })
  }
})
