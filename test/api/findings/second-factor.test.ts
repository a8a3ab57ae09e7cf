import { expect, test } from 'vitest'
import { readDarkTwin, startLadder, storyText } from '#test/support/a-ladder.ts'
import { cellsOf, textOf } from '#test/support/a-table.ts'
import { made } from '#test/support/a-trial.ts'
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
  return split(client, id)
}

async function split(client: Client, id: string): Promise<Split> {
  const { body } = await client.get(`/api/trials/${id}/findings`)
  const ids = new Map<string, string>(
    body.within.levels.map((it: { id: string; label: string }) => [it.label, it.id]),
  )
  return { client, id, level: (label) => ids.get(label) ?? '' }
}

const acidSays = {
  superwash: 'On superwash wool, 30 mL of vinegar per 100 g is enough: it holds.',
  nylon: 'On wool/nylon 80/20, 30 mL of vinegar per 100 g is enough: it holds.',
  silk: 'On silk, not reached: 120 mL of vinegar per 100 g, the most that was tried, does not hold.',
}
const steamSays = {
  cone: 'On cone, 35 minutes of steam holds.',
  silk: 'On silk, 50 minutes of steam does not hold.',
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

test('a steam finding names the base it speaks of, and counts its skeins alone', async () => {
  const { client, id, level } = await steamByBase()
  const { body } = await client.get(`/api/trials/${id}/findings`)
  expect(body.verdict).toMatchObject({ answer: 'holds', headline: steamSays.cone })
  expect(body.counts).toMatchObject({ skeins: 24, vessels: 24, sessions: 4, readings: 48 })
  expect(body.within.others).toEqual([
    { levelId: level('silk'), label: 'silk', answer: 'does-not-hold', headline: steamSays.silk },
  ])
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
  ['steam', steamByBase, steamSays.cone, 'On cone only', 'On cone, in all 24 skeins', [steamSays.silk]],
] as const)(
  'the sheet of %s × base says which base it is of, and what the others answered',
  async (_, start, headline, what, howMany, others) => {
    const { client, id } = await start()
    const { body } = await client.get(`/api/trials/${id}/evidence-sheets/draft`)
    expect(body.sheet.headline).toBe(headline)
    expect(body.sheet.what).toMatch(new RegExp(`^${what}`))
    expect(body.sheet.howMany).toContain(howMany)
    expect(body.sheet.alsoTried).toBe(others.join(' '))
    const page = await client.get(body.path)
    expect(page.body).toContain('<dt>Also tried</dt>')
    for (const other of others) expect(page.body).toContain(other)
  },
)

test('each base has its own sheet, frozen under its own headline', async () => {
  const { client, id, level } = await acidByBase()
  const draft = await client.get(`/api/trials/${id}/evidence-sheets/draft?within=${level('silk')}`)
  expect(draft.body.sheet.headline).toBe(acidSays.silk)
  const frozen = await client.post(`/api/trials/${id}/evidence-sheets`, { within: level('silk') })
  expect(frozen.body).toMatchObject({ headline: acidSays.silk })
  await client.post(`/api/trials/${id}/evidence-sheets`)
  const { body } = await client.get(`/api/trials/${id}/evidence-sheets`)
  expect(body.items.map((it: { headline: string }) => it.headline).sort()).toEqual(
    [acidSays.superwash, acidSays.silk].sort(),
  )
})

test.each([
  ['acid', acidByBase, ['superwash wool', 'silk'], [acidSays.superwash, acidSays.silk]],
  ['steam', steamByBase, ['cone', 'silk'], [steamSays.cone, steamSays.silk]],
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
    // Without a level it is the first that is spoken of.
    const plain = await client.post(`/api/trials/${id}/verdicts`)
    expect(plain).toMatchObject({ status: 200, body: { withinLevelId: level(labels[0]) } })
    const { body } = await client.get(`/api/trials/${id}/verdicts`)
    expect(body.items.map((it: { headline: string }) => it.headline)).toEqual(headlines)
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
  expect(line.words).toBe(
    'On superwash wool, 30 mL of vinegar per 100 g is enough: it holds; silk: does not hold; wool/nylon 80/20: holds',
  )
})

test('the newest finding on the first page names its base and lists the others', async () => {
  const { client } = await steamByBase()
  const { body } = await client.get('/api/home')
  expect(body.newest).toMatchObject({ headline: steamSays.cone, alsoTried: [steamSays.silk] })
})
