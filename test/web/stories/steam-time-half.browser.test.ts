import { expect, test } from 'vitest'
import { readDarkTwin, storyText } from '#test/support/a-ladder.ts'
import { clientAt } from '#test/support/client-at.ts'
import { toolInBrowser } from '#test/support/tool-in-browser.ts'
import { answer, keepAndOpen, partLink, pasteTable } from '#test/support/trial-screens.ts'

const tool = toolInBrowser()
const [headings = '', ...rows] = storyText('steam-time-ladder.csv').trim().split(/\r?\n/)
const sessions = (wanted: readonly string[]) =>
  [headings, ...rows.filter((row) => wanted.includes(row.split(',')[0] ?? ''))].join('\n')

test('half of the planned sessions settle nothing; the other half settles the same trial', async () => {
  const { page, complaints } = await tool.newPage()
  await page.goto('/')
  await page.getByRole('link', { name: 'How short can steaming be?' }).click()
  await page.getByRole('button', { name: 'Start this trial' }).click()
  await page.getByRole('button', { name: 'Lock the rule' }).click()
  await page.getByText(/^Rule locked .*, before the first reading\.$/).waitFor()

  await pasteTable(page, sessions(['1', '2']))
  await answer(page, 'What lies between before and after?', 'warm hand washes', 3)
  await page.getByRole('radio', { name: 'Yes, its own' }).check()
  await keepAndOpen(page, 12)
  await page.getByText('Not settled: 2 of 4 sessions (dates not recorded).', { exact: true }).waitFor()
  expect(await page.getByRole('button', { name: 'Record the verdict' }).count()).toBe(0)
  await partLink(page, 'Evidence').click()
  await page.getByText('Not settled: 2 of 4 sessions (dates not recorded).', { exact: true }).waitFor()

  await pasteTable(page, sessions(['3', '4']))
  await answer(page, 'What lies between before and after?', 'warm hand washes', 3)
  await page.getByRole('radio', { name: 'Yes, its own' }).check()
  await keepAndOpen(page, 12)
  // How exactly it was measured is not known yet, so nothing can be claimed; a twin measured again says it.
  await page.getByText('Not settled: the measuring error is not known').first().waitFor()
  await readDarkTwin(clientAt(tool.url), /trials\/([0-9a-f-]+)/.exec(page.url())?.[1] ?? '')
  await page.reload()
  await page.getByText('35 minutes of steam is enough (dates not recorded).', { exact: true }).waitFor()
  await page.getByText('it changed by −0.50 to 0.55 ΔE00 more').waitFor()
  expect(complaints).toEqual([])
})
