import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { storyText } from '#test/support/a-ladder.ts'
import { axeFindings } from '#test/support/axe-findings.ts'
import { storyRows } from '#test/support/story-rows.ts'
import { toolInBrowser } from '#test/support/tool-in-browser.ts'
import { answer, keepAndOpen, partLink, pasteTable } from '#test/support/trial-screens.ts'

const tool = toolInBrowser()
const colourways = [...new Set(storyRows('colourway-wash-claims.csv').map((row) => row.colourway ?? ''))]

/** What a sheet says, by its terms. */
async function factsOf(page: Page): Promise<ReadonlyMap<string, string>> {
  const pairs = await page
    .getByRole('term')
    .evaluateAll((terms) =>
      terms.map((term) => [term.textContent ?? '', term.nextElementSibling?.textContent ?? ''] as const),
    )
  return new Map(pairs)
}

/** The words of a printable page as a browser shows them that runs no script. */
async function withoutScript(path: string): Promise<{ page: Page; words: string; pictures: number }> {
  const { page } = await tool.newPage({ javaScriptEnabled: false })
  await page.goto(path)
  const words = (await page.locator('body').textContent()) ?? ''
  return { page, words, pictures: await page.getByRole('img').count() }
}

test('evidence of colourfastness is shown, printed and published, and needs no script', async () => {
  const { page, complaints } = await tool.newPage()
  await page.goto('/')
  await page.getByRole('link', { name: 'Is this colourway colourfast?' }).click()
  await page.getByRole('heading', { level: 1, name: 'Start a trial' }).waitFor()
  for (const [place, colourway] of colourways.entries()) {
    if (place > 0) await page.getByRole('button', { name: 'add a level' }).click()
    await page.getByLabel(`Level ${place + 1}`, { exact: true }).fill(colourway)
  }
  await page.getByRole('button', { name: 'Start this trial' }).click()
  await page.getByRole('button', { name: 'Lock the rule' }).click()
  await page.getByText(/^Rule locked .*, before the first reading\.$/).waitFor()

  await partLink(page, 'Evidence').click()
  await page.getByText('A sheet is made from a verdict.').waitFor()

  await pasteTable(page, storyText('colourway-wash-claims.csv'))
  await answer(page, 'What lies between before and after?', 'warm hand washes', 5)
  await answer(page, 'After what was dE00_after_1 read?', 'warm hand washes', 1)
  await answer(page, 'After what was dE00_after_5 read?', 'warm hand washes', 5)
  await answer(page, 'After what was wet_contact_wool read?', 'wet contacts', 1)
  await answer(page, 'After what was crock_dry read?', 'dry rub strokes', 10)
  await answer(page, 'After what was crock_wet read?', 'wet rub strokes', 10)
  await keepAndOpen(page, 18)

  // The table has no change grades, so that nothing can pass; staining of 2-3 settles that turquoise fails.
  const claim = /deep turquoise fails: staining of wool 2-3/
  await page.getByRole('listitem').filter({ hasText: claim }).waitFor()
  await page.getByRole('link', { name: 'Make an evidence sheet' }).click()
  await page.getByRole('heading', { name: 'What the sheet says' }).waitFor()
  const said = await factsOf(page)
  expect(said.get('Worst result')).toContain('staining of wool after five warm hand washes 2-3')
  expect(said.get('How many')).toContain('18 skeins from 18 vessels')
  expect(said.get('How many')).toContain('none lost')
  expect(said.get('Not tested')).toBe('Light, machine wash, hot water, other bases, other depths.')

  const [sheet] = await Promise.all([
    page.context().waitForEvent('page'),
    page.getByRole('link', { name: 'Print', exact: true }).click(),
  ])
  await sheet.getByText('Draft, not published').waitFor()
  await sheet.getByRole('heading', { level: 1, name: claim }).waitFor()
  const printed = await factsOf(sheet)
  for (const term of ['Worst result', 'How many', 'Not tested', 'Test'])
    expect(printed.get(term)).toBe(said.get(term))
  // Grades are in order and no more: none is averaged.
  expect(await sheet.getByRole('columnheader', { name: 'mean' }).count()).toBe(0)
  await sheet.close()

  // The verdict first, then the sheet.
  expect(await page.getByRole('button', { name: 'Publish the sheet' }).count()).toBe(0)
  await page.getByRole('button', { name: 'Record the verdict' }).click()
  await page.getByText(/^Verdict recorded /).waitFor()
  await page.getByRole('button', { name: 'Publish the sheet' }).click()
  const published = page.getByRole('listitem').filter({ hasText: 'checksum' })
  const checksum = /checksum ([0-9a-f]{8})/.exec((await published.textContent()) ?? '')?.[1] ?? 'none'
  const path = (await published.getByRole('link').getAttribute('href')) ?? ''

  const withScript = await tool.newPage()
  await withScript.page.goto(path)
  await withScript.page.getByText('Evidence sheet, published').waitFor()
  const words = (await withScript.page.locator('body').textContent()) ?? ''
  expect(words.replaceAll(' ', '')).toContain(`checksum${checksum}`)
  expect(await withScript.page.locator('script').count()).toBe(0)
  expect(await axeFindings(withScript.page)).toEqual([])

  const plain = await withoutScript(path)
  expect(plain.words).toBe(words)
  expect(plain.pictures).toBe(await withScript.page.getByRole('img').count())
  expect(await plain.page.getByRole('img', { name: 'does not hold', exact: true }).count()).toBe(1)
  expect(await plain.page.locator('svg[role=img]').count()).toBe(plain.pictures)
  expect(complaints).toEqual([])
  expect(withScript.complaints).toEqual([])
})
