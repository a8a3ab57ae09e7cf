import { expect, test } from 'vitest'
import { readDarkTwin, startLadder, storyText } from '#test/support/a-ladder.ts'
import { cellsOf, textOf } from '#test/support/a-table.ts'
import { changed, made } from '#test/support/a-trial.ts'
import { type Client, clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

/** A trial that varies two things, and the ids of the levels of the second by their labels. */
type Split = { client: Client; id: string; level: (label: string) => string }

/** Vinegar on three bases, as the example studio tells it: 30 mL is enough on two of them, on silk nothing is. */
async function acidByBase(): Promise<Split> {
  const client = clientOf(await emptyDatabase())
  const { body } = await client.post('/api/example-studio')
  return split(client, body.trialIds[1])
}

/** The steam ladder on cone, where 35 minutes holds, and on silk, where everything under 75 minutes loses 6 L* more. */
async function steamByBase(): Promise<Split> {
  const client = clientOf(await emptyDatabase())
  const id = await startLadder(client)
  await made(client, `/api/trials/${id}/factors`, {
    key: 'base',
    stage: 'dye',
    levels: [{ label: 'cone' }, { label: 'silk' }],
  })
  const story = cellsOf(storyText('steam-time-ladder.csv'))
  const at = (heading: string) => story.headings.indexOf(heading)
  const onSilk = story.rows.map((cells) =>
    cells.map((cell, i) => {
      if (i === at('rack_place')) return String(Number(cell) + 6)
      if (i === at('L1') && cells[at('steam_min')] !== '75') return String(Number(cell) + 6)
      return cell
    }),
  )
  const rows = [
    ...story.rows.map((cells) => [...cells, 'cone']),
    ...onSilk.map((cells) => [...cells, 'silk']),
  ]
  await made(client, `/api/trials/${id}/table`, {
    text: textOf({ headings: [...story.headings, 'base'], rows }),
    columns: [{ heading: 'base', as: 'level', factor: 'base' }],
    between: { W2: 3 },
    ownVessel: true,
  })
  await readDarkTwin(client, id)
  await datedSessions(client, id)
  return split(client, id)
}

/** Gives the sessions of a trial their days, after the rule was locked. */
async function datedSessions(client: Client, id: string): Promise<void> {
  const { body } = await client.get(`/api/trials/${id}/sessions?limit=100`)
  const today = new Date().toISOString().slice(0, 10)
  for (const { id: session, version } of body.items)
    await changed(client, `/api/sessions/${session}`, version, { heldOn: today })
}

async function split(client: Client, id: string): Promise<Split> {
  const { body } = await client.get(`/api/trials/${id}/findings`)
  const ids = new Map<string, string>(
    body.within.levels.map((it: { id: string; label: string }) => [it.label, it.id]),
  )
  return { client, id, level: (label) => ids.get(label) ?? '' }
}

const acidSays = {
  superwash: 'On superwash wool, 30 mL of vinegar per 100 g is enough.',
  nylon: 'On wool/nylon 80/20, 30 mL of vinegar per 100 g is enough.',
  silk: 'On silk, not reached: 120 mL of vinegar per 100 g, the most that was tried, is not enough.',
}
const steamSays = {
  cone: 'On cone, 35 minutes of steam is enough.',
  silk: 'On silk, 50 minutes of steam is too short.',
}

test('an acid finding names the base it speaks of, and has the answers of the others beside it', async () => {
  const { client, id, level } = await acidByBase()
  const { body } = await client.get(`/api/trials/${id}/findings?within=${level('superwash wool')}`)
  expect(body.verdict).toMatchObject({ answer: 'holds', headline: acidSays.superwash })
  expect(body.within.others).toEqual([
    {
      levelId: level('wool/nylon 80/20'),
      label: 'wool/nylon 80/20',
      answer: 'holds',
      headline: acidSays.nylon,
    },
    { levelId: level('silk'), label: 'silk', answer: 'does-not-hold', headline: acidSays.silk },
  ])
  const silk = await client.get(`/api/trials/${id}/findings?within=${level('silk')}`)
  expect(silk.body.verdict).toMatchObject({ answer: 'does-not-hold', headline: acidSays.silk })
})

test('a finding of all bases names every one, and its tables say which base they are of', async () => {
  const { client, id, level } = await steamByBase()
  const { body } = await client.get(`/api/trials/${id}/findings`)
  expect(body.verdict).toMatchObject({
    answer: 'does-not-hold',
    headline: `${steamSays.cone} ${steamSays.silk}`,
    levelId: null,
  })
  expect(body.within).toMatchObject({ levelId: level('cone'), spokenOf: 'On cone' })
  expect(body.counts).toMatchObject({ skeins: 24, vessels: 24, sessions: 4, readings: 48 })
  expect(body.within.others).toEqual([
    { levelId: level('silk'), label: 'silk', answer: 'does-not-hold', headline: steamSays.silk },
  ])
})

// At 97.5 % the t of 3 degrees of freedom is 3.182 in place of 2.353: 50 minutes then reaches over the margin.
test('the verdict of one base alone is held to stricter limits, for it was chosen with the answers in sight', async () => {
  const { client, id, level } = await steamByBase()
  const { body } = await client.get(`/api/trials/${id}/findings?within=${level('cone')}`)
  expect(body.verdict.headline).toBe(steamSays.cone)
  expect(body.verdict.estimate.confidence).toBeCloseTo(0.9, 12)
  const alone = await made(client, `/api/trials/${id}/verdicts`, { within: level('cone') })
  expect(alone).toMatchObject({ answer: 'not-settled' })
  expect(alone.lead).toContain('One of 2 was chosen, so the limits are stricter, at 97.5\u00a0%.')
})

test.each([
  [
    'acid',
    acidByBase,
    acidSays.superwash,
    'On superwash wool only',
    'On superwash wool, in all 15 skeins',
    [acidSays.nylon, acidSays.silk],
  ],
  ['steam', steamByBase, steamSays.silk, 'On silk only', 'On silk, in all 24 skeins', [steamSays.cone]],
] as const)(
  'the sheet of %s × base says which base it is of, and what the others answered',
  async (_, start, headline, what, howMany, others) => {
    const { client, id, level } = await start()
    const first = what.replace(/^On | only$/g, '')
    const { body } = await client.get(`/api/trials/${id}/evidence-sheets/draft?within=${level(first)}`)
    expect(body.sheet.headline).toBe(headline)
    expect(body.sheet.what).toMatch(new RegExp(`^${what}`))
    expect(body.sheet.howMany).toContain(howMany)
    expect(body.sheet.alsoTried).toBe(others.join(' '))
    const page = await client.get(body.path)
    expect(page.body).toContain('<dt>Also tried</dt>')
    for (const other of others) expect(page.body).toContain(other)
  },
)

test('a sheet of all bases is headed by every answer and has the table of every base', async () => {
  const { client, id } = await acidByBase()
  const { body } = await client.get(`/api/trials/${id}/evidence-sheets/draft`)
  for (const says of Object.values(acidSays)) expect(body.sheet.headline).toContain(says)
  expect(body.sheet.alsoTried).toBe('')
  const page = await client.get(body.path)
  for (const name of ['On superwash wool', 'On wool/nylon 80/20', 'On silk'])
    expect(page.body).toContain(`<h2>${name}</h2>`)
})

test('each base has its own sheet, published from its own recorded verdict', async () => {
  const { client, id, level } = await acidByBase()
  const silk = { within: level('silk') }
  const early = await client.post(`/api/trials/${id}/evidence-sheets`, silk)
  expect(early).toMatchObject({ status: 422 })
  expect(early.body.detail).toContain('Record the verdict first')
  await made(client, `/api/trials/${id}/verdicts`, silk)
  const frozen = await made(client, `/api/trials/${id}/evidence-sheets`, silk)
  expect(frozen).toMatchObject({ headline: acidSays.silk })
  expect((await client.post(`/api/trials/${id}/evidence-sheets`)).status).toBe(422)
})

test.each([
  ['acid', acidByBase, ['superwash wool', 'silk'], [acidSays.superwash, acidSays.silk]],
  ['steam', steamByBase, ['silk'], [steamSays.silk]],
] as const)(
  'each base of %s × base has its own verdict, recorded once for the same look',
  async (_, start, labels, headlines) => {
    const { client, id, level } = await start()
    for (const label of labels) {
      const first = await client.post(`/api/trials/${id}/verdicts`, { within: level(label) })
      expect(first).toMatchObject({ status: 201, body: { withinLevelId: level(label), look: 1 } })
      const again = await client.post(`/api/trials/${id}/verdicts`, { within: level(label) })
      expect(again).toMatchObject({ status: 200, body: { id: first.body.id } })
    }
    // Without a level it is of all of them together.
    const plain = await client.post(`/api/trials/${id}/verdicts`)
    expect(plain).toMatchObject({ status: 201, body: { withinLevelId: null, answer: 'does-not-hold' } })
    const { body } = await client.get(`/api/trials/${id}/verdicts`)
    const kept = body.items.map((it: { headline: string }) => it.headline)
    expect(kept).toHaveLength(labels.length + 1)
    expect(kept).toEqual(expect.arrayContaining([...headlines]))
  },
)

test('a level that the other factor does not have is no level of a verdict or a sheet', async () => {
  const { client, id } = await acidByBase()
  const within = '00000000-0000-4000-8000-000000000000'
  for (const path of ['verdicts', 'evidence-sheets']) {
    const answer = await client.post(`/api/trials/${id}/${path}`, { within })
    expect(answer).toMatchObject({ status: 404, body: { errors: [{ pointer: '#/within' }] } })
  }
})

test('the first page names the base that an answer is for, and says that silk does not hold', async () => {
  const { client, id } = await acidByBase()
  const { body } = await client.get('/api/home')
  const line = body.open.find((it: { trial: { id: string } }) => it.trial.id === id)
  for (const says of Object.values(acidSays)) expect(line.words).toContain(says.replace(/\.$/, ''))
})

test('the newest finding on the first page names every base', async () => {
  const { client } = await steamByBase()
  const { body } = await client.get('/api/home')
  expect(body.newest.headline).toBe(`${steamSays.cone} ${steamSays.silk}`)
})
