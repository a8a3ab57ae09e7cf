import type { Page } from 'playwright-core'
import { describe, expect, test } from 'vitest'
import { storyText } from '#test/support/a-ladder.ts'
import { axeFindings } from '#test/support/axe-findings.ts'
import { mistypedLadder } from '#test/support/mistyped-ladder.ts'
import { type PageOptions, refusal, toolInBrowser } from '#test/support/tool-in-browser.ts'

const tool = toolInBrowser()
const desk = { viewport: { width: 1280, height: 900 } }

// biome-ignore lint/suspicious/noExplicitAny: a test reads whatever comes back
async function asked(path: string, body?: object): Promise<any> {
  const init =
    body === undefined
      ? {}
      : { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }
  return (await fetch(tool.url + path, init)).json()
}

async function aLadder(): Promise<string> {
  const { id } = await asked('/api/trials', { title: 'Steam', question: 'How short can steaming be?' })
  await asked(`/api/trials/${id}/factors`, {
    key: 'steamTime',
    levels: [0, 10, 20, 35, 50, 75].map((value) => ({ label: String(value), value })),
  })
  return id
}

async function readingsOf(options: PageOptions = desk) {
  const trialId = await aLadder()
  const opened = await tool.newPage(options)
  await opened.page.goto(`/trials/${trialId}/readings`)
  return { ...opened, trialId }
}

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name })

async function paste(page: Page, text: string): Promise<void> {
  await page.getByLabel('Rows from a spreadsheet').fill(text)
  await button(page, 'Match the columns').click()
  await page.getByRole('heading', { name: / rows?, \d+ columns?/ }).waitFor()
}

async function sayThreeWashes(page: Page): Promise<void> {
  const asks = page.getByRole('group', { name: 'What lies between before and after?' })
  await asks.getByLabel('What', { exact: true }).selectOption({ label: 'warm hand washes' })
  await asks.getByLabel('How many').fill('3')
}

/** Goes on with the tabulator until the focus is there. */
async function tabTo(
  page: Page,
  role: 'button' | 'textbox' | 'combobox',
  name: string | RegExp,
  key: 'Tab' | 'Shift+Tab' = 'Tab',
) {
  const there = page.getByRole(role, { name }).first()
  for (let step = 0; step < 80; step++) {
    await page.keyboard.press(key)
    if (await there.evaluate((element) => element === document.activeElement)) return
  }
  throw new Error(`The tabulator does not come to ${name}`)
}

describe('the ladder with three mistakes', () => {
  test('is mended by the buttons beside what is said of the rows, and kept whole', async () => {
    const { page, trialId, complaints } = await readingsOf()
    await paste(page, mistypedLadder())
    await page.getByText('19 ready, 4 at fault, 1 to confirm, 1 question to answer').waitFor()
    await button(page, 'Make it 46.0').click()
    await button(page, 'Row 17 is place 5').click()
    await button(page, 'Make it 4-5').click()
    await button(page, /^Keep it/).click()
    await sayThreeWashes(page)
    await page.getByText('24 ready').waitFor()
    await button(page, 'Keep all 24 rows').click()
    await page.getByRole('heading', { name: '24 rows kept' }).waitFor()

    const { items } = await asked(`/api/trials/${trialId}/readings`)
    expect(items).toHaveLength(48)
    const csv = await (await fetch(`${tool.url}/api/trials/${trialId}/table`)).text()
    const row = (place: string) => csv.split('\r\n').find((line) => line.startsWith(`${place},`))
    expect(row('2,3')).toBe('2,3,10,41.4,-12.1,-9.5,46,-8.9,-4.6,5,3,1')
    expect(row('3,5')).toBe('3,5,35,37.8,-15.3,-14.5,38.5,-14.7,-13.5,4,4-5,1')
    // Blank is not recorded, never zero.
    expect(row('3,3')).toBe('3,3,75,37.9,-15.2,-14.6,38.9,-14.7,-13.6,3,4,')
    expect(complaints).toEqual([])
  })

  test('is never rewritten by one button for all: each row is fixed at its own note', async () => {
    const { page } = await readingsOf()
    await paste(page, mistypedLadder())
    await button(page, 'Make it 46.0').waitFor()
    expect(await button(page, /^Make the .* changes?$/).count()).toBe(0)
    for (const fix of ['Make it 46.0', 'Row 17 is place 5', 'Make it 4-5']) await button(page, fix).click()
    await page.getByText('23 ready, 1 to confirm, 1 question to answer').waitFor()
  })

  test('by choice is kept without its bad rows, and those are listed with the reason', async () => {
    const { page, trialId } = await readingsOf()
    await paste(page, mistypedLadder())
    await sayThreeWashes(page)
    await button(page, 'Keep the 19 ready rows').click()
    await page.getByRole('heading', { name: '19 of 24 rows kept' }).waitFor()
    const rows = page.getByRole('group', { name: 'Rows left out' }).getByRole('rowheader')
    expect(await rows.allTextContents()).toEqual(['9', '12', '16', '17', '20'])
    expect((await asked(`/api/trials/${trialId}/readings`)).items).toHaveLength(38)

    await button(page, 'Mend the rows left out').click()
    await page.getByRole('heading', { name: '5 rows, 12 columns' }).waitFor()
    await button(page, 'Make it 46.0').waitFor()
  })

  test('is pasted, mended and kept by keyboard alone', async () => {
    const { page } = await readingsOf()
    await page.getByLabel('Rows from a spreadsheet').waitFor()
    await tabTo(page, 'textbox', 'Rows from a spreadsheet')
    await page.keyboard.insertText(mistypedLadder())
    await tabTo(page, 'button', 'Match the columns')
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { name: '24 rows, 12 columns' }).waitFor()

    await tabTo(page, 'textbox', 'Row 1, run, session')
    for (let row = 0; row < 8; row++) await page.keyboard.press('ArrowDown')
    for (let column = 0; column < 6; column++) await page.keyboard.press('ArrowRight')
    await page.keyboard.type('46.0')
    await page.keyboard.press('Escape')
    await page.getByText('20 ready, 3 at fault').waitFor()
    expect(await page.getByLabel('Row 9, L1, L* after').inputValue()).toBe('46.0')

    for (const fix of ['Row 17 is place 5', 'Make it 4-5']) {
      await tabTo(page, 'button', fix)
      await page.keyboard.press('Enter')
    }
    await page.getByText('23 ready, 1 to confirm').waitFor()
    await tabTo(page, 'combobox', 'What', 'Shift+Tab')
    await page.keyboard.type('warm')
    await page.keyboard.press('Tab')
    await page.keyboard.type('3')
    await tabTo(page, 'button', /^Keep it/)
    await page.keyboard.press('Enter')
    await page.getByText('24 ready').waitFor()
    await tabTo(page, 'button', 'Keep all 24 rows')
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { name: '24 rows kept' }).waitFor()
  })
})

test('a table that says other levels than the plan drew is kept as it is, after one question', async () => {
  const trialId = await aLadder()
  await asked(`/api/trials/${trialId}/plan/draw`, {
    sessions: 4,
    vesselsPerLevel: 1,
    skeinsPerVessel: 1,
    seed: 11,
  })
  const { page, complaints } = await tool.newPage(desk)
  await page.goto(`/trials/${trialId}/readings`)
  await paste(page, storyText('steam-time-ladder.csv'))
  const question = page.getByRole('group', { name: /Was it done in another order than drawn\?$/ })
  const options = question.getByRole('radio')
  expect(await options.count()).toBe(2)
  expect(
    await options.evaluateAll((all) => all.map((it) => it.closest('label')?.textContent?.trim())),
  ).toEqual(['Yes: keep what the table says', 'No: I will correct the rows'])
  // No cell is changed by an answer: with “No” the rows are marked, and nothing is offered to write over them.
  await question.getByRole('radio', { name: /^No/ }).check()
  await page.getByText(/\d+ at fault/).waitFor()
  expect(await button(page, /^Make it /).count()).toBe(0)
  await question.getByRole('radio', { name: /^Yes/ }).check()
  await sayThreeWashes(page)
  await page.getByText('24 ready').waitFor()
  await button(page, 'Keep all 24 rows').click()
  await page.getByRole('heading', { name: '24 rows kept' }).waitFor()
  const { items } = await asked(`/api/trials/${trialId}/skeins`)
  expect(items).toHaveLength(24)
  await page.getByRole('link', { name: 'Open the findings' }).click()
  await page.getByText('The work differed from the plan').waitFor()
  expect(complaints).toEqual([])
})

test('a refused table stays in its box, with the reason', async () => {
  const { page } = await readingsOf({ ...desk, expected: refusal })
  await page.getByLabel('Rows from a spreadsheet').fill('L,L\n1,2')
  await button(page, 'Match the columns').click()
  await page.getByText('The heading “L” is there twice.').waitFor()
  expect(await page.getByLabel('Rows from a spreadsheet').inputValue()).toBe('L,L\n1,2')
})

test('a file is read as a paste is, and a column can be given another meaning', async () => {
  const { page } = await readingsOf()
  await page.getByLabel('Choose a file, CSV or tabs').setInputFiles({
    name: 'ladder.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(storyText('steam-time-ladder.csv')),
  })
  await page.getByText('24 ready, 1 question to answer').waitFor()
  await page.getByLabel('Meaning of felt').selectOption({ label: 'not used' })
  await page.getByText('felt is not used.').waitFor()
})

test('a note leads to its cell', async () => {
  const { page } = await readingsOf()
  await paste(page, mistypedLadder())
  await button(page, 'Row 20, staining: 4/5').click()
  const cell = page.getByLabel('Row 20, stain_white_wool, staining of wool')
  expect(await cell.evaluate((element) => element === document.activeElement)).toBe(true)
})

test('of a long table a hundred rows are shown, those at fault first', async () => {
  const { page } = await readingsOf()
  const rows = Array.from({ length: 1000 }, (_, i) => `S${i + 1},20,${i === 899 ? 400 : 40},1,2`)
  await paste(page, ['skein,steam,L,a,b', ...rows].join('\n'))
  expect(await page.getByLabel(/^Row \d+, skein, skein$/).count()).toBe(100)
  expect(await page.getByRole('rowheader').first().textContent()).toBe('900, at fault')
  await button(page, 'Later rows').click()
  await page.getByText('101 to 200 of 1,000 rows').waitFor()
  await button(page, 'Row 900, L*: 400').click()
  await page.getByText('1 to 100 of 1,000 rows').waitFor()
})

test('one skein is read, and its reading corrected with a reason', async () => {
  const { page, trialId } = await readingsOf({ ...desk, expected: refusal })
  await page.getByLabel('Its code').fill('A1')
  await page.getByLabel('Name of the sitting').fill('before')
  await page.getByLabel('L*', { exact: true }).fill('49,6')
  await page.getByLabel('a*', { exact: true }).fill('-7.1')
  await page.getByLabel('b*', { exact: true }).fill('−0.9')
  await button(page, 'Keep the reading').click()
  await page.getByText('Skein A1 is read: 49.6, −7.1 and −0.9').waitFor()

  await button(page, 'Correct: skein A1, before').click()
  const form = page.locator('form', { has: page.getByRole('heading', { name: /Correct a reading/ }) })
  await form.getByLabel('L*', { exact: true }).fill('46.9')
  await form.getByRole('button', { name: 'Keep the correction' }).click()
  await form.getByText('A correction says why.').waitFor()
  expect(await form.getByLabel('L*', { exact: true }).inputValue()).toBe('46.9')
  await form.getByLabel('Reason').fill('typed 49 for 46')
  await form.getByRole('button', { name: 'Keep the correction' }).click()
  await page.getByText('corrected: typed 49 for 46').waitFor()
  const { items } = await asked(`/api/trials/${trialId}/readings`)
  expect(items.map((it: { meanL: number; superseded: boolean }) => [it.meanL, it.superseded])).toEqual([
    [49.6, true],
    [46.9, false],
  ])
})

describe.each([
  { width: 360, colorScheme: 'light' },
  { width: 360, colorScheme: 'dark' },
  { width: 1280, colorScheme: 'light' },
  { width: 1280, colorScheme: 'dark' },
] as const)('at $width wide and $colorScheme', ({ width, colorScheme }) => {
  test('axe finds nothing at any step, and nothing is wider than the page', async () => {
    const { page } = await readingsOf({ viewport: { width, height: 800 }, colorScheme })
    const beyond = () =>
      page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
    await page.getByText('No readings yet.').waitFor()
    expect([await axeFindings(page), await beyond()]).toEqual([[], 0])
    await paste(page, mistypedLadder())
    expect([await axeFindings(page), await beyond()]).toEqual([[], 0])
    await sayThreeWashes(page)
    await button(page, 'Keep the 19 ready rows').click()
    await page.getByRole('heading', { name: '19 of 24 rows kept' }).waitFor()
    await page.getByText('38 readings in 2 sittings.').waitFor()
    expect([await axeFindings(page), await beyond()]).toEqual([[], 0])
  })
})
