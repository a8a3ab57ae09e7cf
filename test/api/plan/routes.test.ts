import { beforeEach, expect, test } from 'vitest'
import { createApp } from '#api/app.ts'
import type { DrawnPlan, PlanTried } from '#api/contract/plan.ts'
import { asked } from '#test/support/asked.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

let app: ReturnType<typeof createApp>
let db: Awaited<ReturnType<typeof emptyDatabase>>
beforeEach(async () => {
  db = await emptyDatabase()
  app = createApp({ db })
})

async function ladder(levels: readonly string[] = ['0', '35', '75'], pattern = 'P1'): Promise<string> {
  const trial = { title: 'Steam', question: 'How short can steaming be?', pattern }
  const { body } = await asked<{ id: string }>(app, '/api/trials', { body: trial })
  await asked(app, `/api/trials/${body.id}/factors`, {
    body: { key: 'steamTime', levels: levels.map((label) => ({ label })) },
  })
  return body.id
}

const usual = { sessions: 4, vesselsPerLevel: 1, skeinsPerVessel: 1 }

test('three skeins in a packet count as one, and the guard offers a bench that counts more', async () => {
  const id = await ladder(['0', '10', '20', '35', '50', '75'])
  const bench = { sessions: 2, vesselsPerLevel: 1, skeinsPerVessel: 3, trials: 1000 }
  const { body } = await asked<PlanTried>(app, `/api/trials/${id}/plan`, { body: bench })
  expect(body.counts).toMatchObject({
    sessions: 2,
    vessels: 12,
    skeins: 36,
    unitsPerLevel: 2,
    skeinsPerLevel: 6,
  })
  expect(body.guards).toMatchObject([
    {
      title: 'Three skeins in one packet are one.',
      text: [
        'They share its heat, so this plan counts 2 for each level. Two sessions settle nothing: three is the least, four is better.',
        'One skein in each packet and four sessions take 24 skeins instead of 36, and count 4.',
      ],
      offer: { sessions: 4, vesselsPerLevel: 1, skeinsPerVessel: 1 },
    },
  ])
})

test('a plan of four sessions with one skein in each packet has no guard', async () => {
  const id = await ladder()
  const { body } = await asked<PlanTried>(app, `/api/trials/${id}/plan`, { body: { ...usual, trials: 1000 } })
  expect(body.guards).toEqual([])
})

test('two sessions never say holds, and more sessions say it more often', async () => {
  const id = await ladder()
  const tried = { ...usual, sdOfDifferences: 0.5, noise: 0, seed: 20260302, trials: 4000 }
  const { body } = await asked<PlanTried>(app, `/api/trials/${id}/plan`, { body: tried })
  expect(body.power.map((it) => it.sessions)).toEqual([2, 3, 4, 5])
  const [two, three, four, five] = body.power.map((it) => it.saysHolds)
  expect(two).toBe(0)
  expect(three).toBeLessThan(four ?? 0)
  expect(four).toBeLessThan(five ?? 0)
  // One-sided t of 5 %, by its own definition; the standard error of 4000 trials is 0.35 points.
  for (const it of body.power) expect(it.saysWrongly).toBeLessThan(0.065)
})

// Runs for 80 % by the non-central t: a margin of 1, 1.5, 2, 3 spreads takes 8, 5, 4, 3 sessions (published tables of t power).
test('with a margin of twice the spread four sessions reach 80 of 100 and three do not', async () => {
  const id = await ladder()
  const tried = { ...usual, margin: 1, sdOfDifferences: 0.5, noise: 0, seed: 7, trials: 20_000 }
  const { body } = await asked<PlanTried>(app, `/api/trials/${id}/plan`, { body: tried })
  const share = (sessions: number) => body.power.find((it) => it.sessions === sessions)?.saysHolds ?? 0
  expect(share(3)).toBeLessThan(0.8)
  expect(share(4)).toBeGreaterThan(0.8)
})

test('the same seed gives the same chances', async () => {
  const id = await ladder()
  const plan = { ...usual, seed: 11, trials: 1000 }
  const first = await asked<PlanTried>(app, `/api/trials/${id}/plan`, { body: plan })
  const second = await asked<PlanTried>(app, `/api/trials/${id}/plan`, { body: plan })
  expect(second.body.power).toEqual(first.body.power)
})

test('a rule of described limits has nothing to try', async () => {
  const id = await ladder(['0', '75'], 'P2')
  const { body } = await asked<PlanTried>(app, `/api/trials/${id}/plan`, { body: usual })
  expect(body.power).toEqual([])
  expect(body.nothingToTry).toContain('nothing to try')
})

test('a plan without levels is refused', async () => {
  const trial = { title: 'Bare', question: 'What now?' }
  const { body } = await asked<{ id: string }>(app, '/api/trials', { body: trial })
  const answer = await asked(app, `/api/trials/${body.id}/plan`, { body: usual })
  expect(answer.status).toBe(422)
  expect((await asked(app, `/api/trials/${body.id}/plan/draw`, { body: usual })).status).toBe(422)
})

test('drawing gives every level one place in every session, and keeps the seed', async () => {
  const id = await ladder()
  const { status, body } = await asked<DrawnPlan>(app, `/api/trials/${id}/plan/draw`, {
    body: { ...usual, seed: 20260302 },
  })
  expect(status).toBe(201)
  expect(body.seed).toBe(20260302)
  expect(body.sessions.map((it) => it.label)).toEqual(['Session 1', 'Session 2', 'Session 3', 'Session 4'])
  for (const { vessels } of body.sessions) {
    expect(vessels.map((it) => it.place)).toEqual(['1', '2', '3'])
    expect(vessels.map((it) => it.levels[0]?.label).toSorted()).toEqual(['0 min', '35 min', '75 min'])
    // A ladder of times goes in longest first: the turn follows from the time and is not drawn.
    expect(vessels.map((it) => it.order)).toEqual([null, null, null])
  }
  expect(body.balance).toEqual([
    'As even over the places as this number of sessions allows: a level meets some of them once more than others. 3 sessions, or twice as many, would be quite even.',
  ])
  expect(body.sessions[2]?.vessels[1]?.skeins.map((it) => it.code)).toEqual(['3-2'])
  const shown = await asked<DrawnPlan>(app, `/api/trials/${id}/plan`)
  expect(shown.body).toEqual(body)
})

test('one seed draws the same places in two trials', async () => {
  const places = async () => {
    const id = await ladder()
    const { body } = await asked<DrawnPlan>(app, `/api/trials/${id}/plan/draw`, {
      body: { ...usual, seed: 5 },
    })
    return body.sessions.map(({ vessels }) => vessels.map((it) => it.levels[0]?.label))
  }
  expect(await places()).toEqual(await places())
})

test('what was drawn stays: asking again is refused, asking for more adds sessions', async () => {
  const id = await ladder()
  const before = await asked<DrawnPlan>(app, `/api/trials/${id}/plan/draw`, { body: usual })
  const again = await asked(app, `/api/trials/${id}/plan/draw`, { body: usual })
  expect(again.status).toBe(409)
  const more = await asked<DrawnPlan>(app, `/api/trials/${id}/plan/draw`, { body: { ...usual, sessions: 6 } })
  expect(more.status).toBe(201)
  expect(more.body.sessions).toHaveLength(6)
  expect(more.body.sessions.slice(0, 4)).toEqual(before.body.sessions)
  expect(more.body.seed).toBe(before.body.seed)
})

test('sessions that are added go on evenly, whatever the seed: no level keeps to a place or a turn', async () => {
  const trial = { title: 'Two ways', question: 'As good?', pattern: 'P4' }
  const { body: made } = await asked<{ id: string }>(app, '/api/trials', { body: trial })
  await asked(app, `/api/trials/${made.id}/factors`, {
    body: {
      key: 'way of working',
      kind: 'category',
      stage: 'dye',
      levels: [{ label: 'usual', isReference: true }, { label: 'shortcut' }, { label: 'other' }],
    },
  })
  const draw = (sessions: number) =>
    asked<DrawnPlan>(app, `/api/trials/${made.id}/plan/draw`, { body: { ...usual, sessions, seed: 3 } })
  const one = await draw(1)
  expect(one.body.balance[0]).toContain('each level meets 1 of 3 places, none twice; 3 sessions')
  for (const sessions of [2, 4, 6]) {
    const { body } = await draw(sessions)
    for (const by of ['place', 'order'] as const) {
      const times = new Map<string, number>()
      for (const vessel of body.sessions.flatMap(({ vessels }) => vessels)) {
        const key = `${vessel.levels[0]?.label} ${vessel[by]}`
        times.set(key, (times.get(key) ?? 0) + 1)
      }
      expect(Math.max(...times.values())).toBe(Math.ceil(sessions / 3))
    }
    if (sessions === 6)
      expect(body.balance).toEqual([
        'Each level meets each place equally often.',
        'Each level meets each turn equally often.',
      ])
  }
})

test('a colourway lies at another place of each light card', async () => {
  const trial = { title: 'Window', question: 'What does my window do?', pattern: 'P5' }
  const { body: made } = await asked<{ id: string }>(app, '/api/trials', { body: trial })
  const levels = ['oat', 'brick', 'teal'].map((label) => ({ label }))
  await asked(app, `/api/trials/${made.id}/factors`, {
    body: { key: 'colourway', kind: 'category', stage: 'dye', levels },
  })
  const { body } = await asked<DrawnPlan>(app, `/api/trials/${made.id}/plan/draw`, {
    body: { sessions: 1, vesselsPerLevel: 3, skeinsPerVessel: 1, seed: 4 },
  })
  const open = body.sessions[0]?.vessels
    .flatMap(({ skeins }) => skeins)
    .filter(({ code }) => code.endsWith('open'))
    .map(({ level, place }) => `${level} ${place}`)
  expect(new Set(open).size).toBe(9)
  expect(body.balance).toEqual(['Each level meets each place equally often.'])
})

test('skeins that share a packet are coded by letter, and a twin is cut from the reference in each session', async () => {
  const id = await ladder()
  const wanted = { sessions: 3, vesselsPerLevel: 1, skeinsPerVessel: 2, seed: 1, twins: true }
  const { body } = await asked<DrawnPlan>(app, `/api/trials/${id}/plan/draw`, { body: wanted })
  const reference = body.sessions[0]?.vessels.find((it) => it.levels[0]?.label === '75 min')
  const place = reference?.place
  expect(reference?.skeins.map((it) => it.code)).toEqual([`1-${place}a`, `1-${place}b`, `1-${place}a twin`])
  const twins = await db
    .selectFrom('skein')
    .innerJoin('skein as parent', 'parent.id', 'skein.cutFromId')
    .innerJoin('placement', 'placement.skeinId', 'parent.id')
    .innerJoin('treatment', 'treatment.vesselId', 'placement.vesselId')
    .innerJoin('level', 'level.id', 'treatment.levelId')
    .select(['skein.role', 'level.label'])
    .where('skein.trialId', '=', id)
    .execute()
  expect(twins).toEqual(Array.from({ length: 3 }, () => ({ role: 'twin', label: '75' })))
})

test('two factors: every combination has its own jar', async () => {
  const id = await ladder(['0', '75'])
  await asked(app, `/api/trials/${id}/factors`, {
    body: { key: 'base', kind: 'category', stage: 'set', levels: [{ label: 'fawn' }, { label: 'white' }] },
  })
  const { body } = await asked<DrawnPlan>(app, `/api/trials/${id}/plan/draw`, {
    body: { ...usual, sessions: 3 },
  })
  const given = body.sessions[0]?.vessels.map((it) => it.levels.map((level) => level.label).join(', '))
  expect(given?.toSorted()).toEqual(['0 min, fawn', '0 min, white', '75 min, fawn', '75 min, white'])
})

test('a light card holds an open and a foil half of each colourway, the blue wools, and a twin lies in the dark', async () => {
  const trial = { title: 'Window', question: 'What does my window do?', pattern: 'P5' }
  const { body: made } = await asked<{ id: string }>(app, '/api/trials', { body: trial })
  await asked(app, `/api/trials/${made.id}/factors`, {
    body: {
      key: 'colourway',
      kind: 'category',
      stage: 'dye',
      levels: [{ label: 'oat' }, { label: 'brick' }],
    },
  })
  const { body } = await asked<DrawnPlan>(app, `/api/trials/${made.id}/plan/draw`, {
    body: { sessions: 1, vesselsPerLevel: 3, skeinsPerVessel: 1 },
  })
  const cards = body.sessions[0]?.vessels.filter((it) => !it.label.startsWith('envelope')) ?? []
  expect(cards).toHaveLength(3)
  for (const card of cards) {
    expect(card.skeins.filter((it) => it.role === 'blue wool')).toHaveLength(6)
    const halves = card.skeins.filter((it) => it.role === 'treated')
    expect(halves.map((it) => it.level).toSorted()).toEqual(['brick', 'brick', 'oat', 'oat'])
  }
  const dark = body.sessions[0]?.vessels.find((it) => it.label.startsWith('envelope'))
  expect(dark?.skeins.map((it) => it.role)).toEqual(['dark twin', 'dark twin'])
})
