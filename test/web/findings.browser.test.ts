import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { readDarkTwin, startLadder, storyText } from '#test/support/a-ladder.ts'
import { cellsOf, changed, textOf } from '#test/support/a-table.ts'
import { axeFindings } from '#test/support/axe-findings.ts'
import type { Client } from '#test/support/client.ts'
import { clientAt } from '#test/support/client-at.ts'
import { toolInBrowser } from '#test/support/tool-in-browser.ts'

const tool = toolInBrowser()
/** The story has no dates, and the headline says so. */
const enough = '35 minutes of steam is enough (dates not recorded).'
const story = cellsOf(storyText('steam-time-ladder.csv'))

const client = (): Client => clientAt(tool.url)

/** A ladder whose table holds these sessions of the story, on the page of its findings. */
async function findings({
  sessions = 4,
  width = 1280,
  scheme = 'light',
}: {
  sessions?: number
  width?: number
  scheme?: 'light' | 'dark'
} = {}): Promise<{ page: Page; id: string; complaints: readonly string[] }> {
  const id = await startLadder(client())
  if (sessions > 0) {
    const text = textOf(changed(story, (row) => (Number(row.run) <= sessions ? row : undefined)))
    const kept = await client().post(`/api/trials/${id}/table`, { text, between: { W2: 3 }, ownVessel: true })
    expect(kept.status).toBe(201)
    await readDarkTwin(client(), id)
  }
  const { page, complaints } = await tool.newPage({
    viewport: { width, height: 900 },
    colorScheme: scheme,
  })
  await page.goto(`/trials/${id}/findings`)
  return { page, id, complaints }
}

test('the pasted ladder reads “35 minutes of steam is enough”, with the deciding interval and the reason for the stop', async () => {
  const { page, complaints } = await findings()
  await page.getByText(enough, { exact: true }).waitFor()
  await page.getByText('it changed by −0.50 to 0.55 ΔE00 more').waitFor()
  await page.getByText('You allowed 1.0.').waitFor()
  const steps = page.getByRole('region', { name: 'The rule, step by step' })
  await steps.getByRole('row', { name: /35 min .*−0\.50 to 0\.55 4-5 4 2 enough/ }).waitFor()
  await steps.getByRole('row', { name: /20 min .*0\.73 to 1\.97 .*too short/ }).waitFor()
  // What was measured, before the measuring error was weighed, stands under the fold; so does what each gate found.
  const raw = page.getByRole('group', { name: 'As measured, and what decides' })
  await raw.getByRole('row', { name: /^35 min .*−0\.47 to 0\.50 .*−0\.50 to 0\.55$/ }).waitFor()
  await page.getByText('All 4 sessions of the plan are in.').waitFor()
  expect(complaints).toEqual([])
})

test('two sessions are not settled, with what would settle it and the way to plan it', async () => {
  const { page, id } = await findings({ sessions: 2 })
  await page.getByText('Not settled: 2 of 4 sessions (dates not recorded).', { exact: true }).waitFor()
  const settle = page.getByRole('region', { name: 'What would settle it' })
  await settle.getByText('If 50 minutes is truly as good as 75 minutes').waitFor()
  await settle.getByText('with 2 more').waitFor()
  const plan = page.getByRole('link', { name: 'Plan 2 more sessions' })
  expect(await plan.getAttribute('href')).toBe(`/trials/${id}/plan`)
  expect(await page.getByRole('button', { name: 'Record the verdict' }).count()).toBe(0)
})

test('the verdict is recorded once, and the page says when and under which rule', async () => {
  const { page, id } = await findings()
  await page.getByRole('button', { name: 'Record the verdict' }).click()
  const record = page.getByText(/^Recorded .*, under edition 1 of the rule\.$/)
  await record.waitFor()
  expect(await record.evaluate((it) => it === it.ownerDocument.activeElement)).toBe(true)
  expect(await page.getByRole('button', { name: 'Record the verdict' }).count()).toBe(0)
  const { body } = await client().get(`/api/trials/${id}/verdicts`)
  expect(body.items.map((it: { headline: string }) => it.headline)).toEqual([enough])
})

test('the table of a picture is one press away, and the way back to the picture too', async () => {
  const { page } = await findings()
  await page.getByRole('button', { name: 'as a table: Loss by steam time' }).click()
  const row = page.getByRole('group', { name: 'Loss by steam time' }).getByRole('row', { name: /^35 min/ })
  expect(await row.getByRole('cell').allInnerTexts()).toEqual(
    expect.arrayContaining(['1.15', '0.68', '1.40']),
  )
  await page.getByRole('button', { name: 'as a picture: Loss by steam time' }).click()
  await page.getByRole('img', { name: /^35 minutes of steam is enough/ }).waitFor()
})

test('every skein stands in the table, twelve at first, and a result outside its limit says so', async () => {
  const { page } = await findings()
  const rows = page.getByRole('group', { name: 'Every skein' }).getByRole('row')
  await page.getByRole('button', { name: 'Show the other 12' }).waitFor()
  expect(await rows.count()).toBe(12 + 2)
  await page.getByRole('button', { name: 'Show the other 12' }).press('Enter')
  expect(await rows.count()).toBe(24 + 2)
  await page.getByRole('row', { name: /^4-2 35 min/ }).waitFor()
  await page.getByRole('row', { name: /^1-3 75 min .* 3 \(outside the limit\)$/ }).waitFor()
})

test('before the first reading the page says so and leads to the readings', async () => {
  const { page, id } = await findings({ sessions: 0 })
  await page.getByRole('heading', { name: 'No readings yet' }).waitFor()
  const way = page.getByRole('link', { name: 'Go to the readings' })
  expect(await way.getAttribute('href')).toBe(`/trials/${id}/readings`)
})

test('a second factor is chosen on the page, and each of its levels has its own answer', async () => {
  const { body } = await client().post('/api/example-studio')
  const { page } = await tool.newPage()
  await page.goto(`/trials/${body.trialIds[1]}/findings`)
  // All together at first: each base has its own line.
  const lines = page.getByRole('listitem')
  await lines.filter({ hasText: 'On superwash wool, 30 mL of vinegar per 100 g is enough.' }).waitFor()
  await lines.filter({ hasText: 'On silk, not reached: 120 mL of vinegar per 100 g' }).waitFor()
  expect(await page.getByRole('radio', { name: 'all together' }).isChecked()).toBe(true)
  const silk = page.getByRole('radio', { name: 'silk' })
  await silk.focus()
  await silk.press('Space')
  await page.getByText('Also tried:').waitFor()
  // What the other bases answered stands beside it.
  await lines.filter({ hasText: 'On superwash wool, 30 mL' }).waitFor()
  await page.getByText(/^On silk, not reached: 120 mL of vinegar per 100 g/).waitFor()
  expect(await silk.isChecked()).toBe(true)
  expect(await silk.evaluate((it) => it === it.ownerDocument.activeElement)).toBe(true)
  expect(new URL(page.url()).searchParams.get('within')).not.toBeNull()
})

test('claims by lot show the worst of each test, and no mean', async () => {
  const { body } = await client().post('/api/example-studio')
  const { page } = await tool.newPage()
  await page.goto(`/trials/${body.trialIds[2]}/findings`)
  const steps = page.getByRole('region', { name: 'The rule, step by step' })
  await steps
    .getByRole('row', { name: /^deep turquoise 3 2-3 .*2-3 in lot A; the limit is 4 or better/ })
    .waitFor()
  await page.getByRole('button', { name: 'as a table: Staining by colourway' }).click()
  const heads = page.getByRole('group', { name: 'Staining by colourway' }).getByRole('columnheader')
  expect(await heads.allInnerTexts()).toEqual(['Colourway', 'each'])
})

test('a phone folds the cautions and the method, and opens them at a press', async () => {
  const { page } = await findings({ width: 360 })
  const caution = page.getByText('Only what was tried')
  await page.getByRole('button', { name: /more cautions?$/ }).waitFor()
  expect(await caution.isVisible()).toBe(false)
  await page.getByRole('button', { name: /more cautions?$/ }).click()
  expect(await caution.isVisible()).toBe(true)
  const method = page.getByText('Levels are compared by differences within blocks (paired t).')
  expect(await method.isVisible()).toBe(false)
  await page.getByRole('button', { name: 'How this was worked out' }).click()
  expect(await method.isVisible()).toBe(true)
})

test.each([
  [360, 'light'],
  [360, 'dark'],
  [1280, 'light'],
  [1280, 'dark'],
] as const)('axe finds nothing at %i, %s, and nothing runs over the side', async (width, scheme) => {
  const { page } = await findings({ width, scheme })
  await page.getByText(enough, { exact: true }).waitFor()
  await page.getByRole('img', { name: /^From before to after/ }).waitFor()
  expect(await axeFindings(page)).toEqual([])
  expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBe(0)
})
