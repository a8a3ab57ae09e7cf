import { beforeEach, expect, test } from 'vitest'
import { createApp } from '#api/app.ts'
import type { Home } from '#api/contract/home.ts'
import type { DrawnPlan } from '#api/contract/plan.ts'
import { asked } from '#test/support/asked.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

let app: ReturnType<typeof createApp>
let db: Awaited<ReturnType<typeof emptyDatabase>>
beforeEach(async () => {
  db = await emptyDatabase()
  app = createApp({ db })
})

const home = async (): Promise<Home> => (await asked<Home>(app, '/api/home')).body

async function drawn(sessions = 3): Promise<{ id: string; plan: DrawnPlan }> {
  const trial = { title: 'Steam', question: 'How short can steaming be?', pattern: 'P1' }
  const { body } = await asked<{ id: string }>(app, '/api/trials', { body: trial })
  await asked(app, `/api/trials/${body.id}/factors`, {
    body: { key: 'steamTime', levels: [{ label: '35' }, { label: '75' }] },
  })
  const bench = { sessions, vesselsPerLevel: 1, skeinsPerVessel: 1 }
  const plan = await asked<DrawnPlan>(app, `/api/trials/${body.id}/plan/draw`, { body: bench })
  return { id: body.id, plan: plan.body }
}

test('with nothing on the bench nothing is due', async () => {
  expect(await home()).toEqual({ due: [], open: [], newest: null })
})

test('a trial that was only asked stands open, being planned', async () => {
  await asked(app, '/api/trials', { body: { title: 'Acid', question: 'How much acid does my water need?' } })
  const { open, due } = await home()
  expect(due).toEqual([])
  expect(open).toMatchObject([
    { trial: { question: 'How much acid does my water need?' }, words: 'being planned', skeins: 0 },
  ])
})

test('the next session of a drawn trial is due, whenever it suits', async () => {
  await drawn()
  const { due, open } = await home()
  expect(due).toMatchObject([
    {
      kind: 'session',
      day: null,
      what: 'Session 1 at the stove',
      of: 'Steam · 2 packets, places drawn',
      button: 'Bench sheet',
    },
  ])
  expect(open).toMatchObject([{ sessionWords: '0 of 3 sessions', skeins: 6, skeinsRead: 0 }])
})

test('a session of which one skein has a result asks for the others', async () => {
  const { plan } = await drawn()
  const skein = plan.sessions[0]?.vessels[0]?.skeins[0]
  await db
    .insertInto('outcome')
    .values({ kind: 'felting', skeinId: skein?.id ?? '', value: 1 })
    .execute()
  const { due, open } = await home()
  expect(due).toMatchObject([
    { kind: 'read', what: 'Read the other skeins, session 1', of: 'Steam · 1 skein' },
  ])
  expect(open).toMatchObject([{ sessionWords: '1 of 3 sessions' }])
})

test('a window whose date has come is due until a piece of it was read on or after that day', async () => {
  const { id, plan } = await drawn(1)
  const skeinId = plan.sessions[0]?.vessels[0]?.skeins[0]?.id ?? ''
  const window = await db
    .insertInto('session')
    .values({ trialId: id, kind: 'light', label: 'West window' })
    .returning('id')
    .executeTakeFirstOrThrow()
  const card = await db
    .insertInto('vessel')
    .values({ sessionId: window.id, stage: 'light', kind: 'card', label: 'card 1' })
    .returning('id')
    .executeTakeFirstOrThrow()
  await db.insertInto('placement').values({ skeinId, vesselId: card.id }).execute()
  const due = JSON.stringify(['2026-03-15', '2026-03-29'])
  await db
    .insertInto('exposure')
    .values({ vesselId: card.id, protocol: 'X1', startedAt: '2026-03-01T08:00:00Z', due })
    .execute()
  expect((await home()).due).toMatchObject([
    { kind: 'light', day: '2026-03-15', what: 'Light cards, week 2', of: 'West window · 1 card · 1 piece' },
  ])
  await db
    .insertInto('outcome')
    .values({ kind: 'dE00', skeinId, value: 1, wear: '{"X1 days": 14}', takenAt: '2026-03-16T10:00:00Z' })
    .execute()
  expect((await home()).due).toMatchObject([
    { kind: 'light', day: '2026-03-29', what: 'Light cards, week 4' },
  ])
})

test('an archived trial is not open', async () => {
  const { body } = await asked<{ id: string }>(app, '/api/trials', {
    body: { title: 'Old', question: 'Was it so?' },
  })
  await db.updateTable('trial').set({ archivedAt: new Date() }).where('id', '=', body.id).execute()
  expect((await home()).open).toEqual([])
})
