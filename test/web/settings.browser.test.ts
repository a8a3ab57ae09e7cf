import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { axeFindings } from '#test/support/axe-findings.ts'
import { type PageOptions, refusal, toolInBrowser } from '#test/support/tool-in-browser.ts'

const tool = toolInBrowser()

async function opened(options: PageOptions = {}): Promise<Page> {
  const { page } = await tool.newPage({ viewport: { width: 360, height: 740 }, ...options })
  await page.goto('/settings')
  await page.getByRole('heading', { name: 'Units' }).waitFor()
  return page
}

test('an instrument is added, and a gauge check gives it its noise', async () => {
  const page = await opened({ expected: refusal })
  await page.getByRole('textbox', { name: 'Name' }).fill('bench')
  await page.getByRole('textbox', { name: 'SD L*' }).fill('nought')
  await page.getByRole('button', { name: 'Add it' }).click()
  await page.getByRole('alert').waitFor()
  expect(await page.getByRole('textbox', { name: 'SD L*' }).inputValue()).toBe('nought')
  expect(await page.getByRole('textbox', { name: 'SD L*' }).getAttribute('aria-invalid')).toBe('true')
  await page.getByRole('textbox', { name: 'SD L*' }).fill('0,3')
  await page.getByRole('textbox', { name: 'SD a*' }).fill('0,3')
  await page.getByRole('textbox', { name: 'SD b*' }).fill('0,3')
  await page.getByRole('button', { name: 'Add it' }).click()
  const row = page.getByRole('row', { name: /^bench/ })
  // 2.8 × 0.3 ÷ √3 = 0.485
  await row.getByText('0.48', { exact: true }).waitFor()
  await row.getByText('entered').waitFor()

  await page.getByRole('button', { name: 'Waits for things read twice or more' }).waitFor()
  // Two readings of 50 and 51 have an SD of 1 ÷ √2.
  await page.getByRole('textbox', { name: 'Readings' }).fill('teal\t50\t0\t0\nteal\t51\t0\t0')
  await page.getByText(/L\* 0\.71, a\* 0\.00, b\* 0\.00/).waitFor()
  await page.getByRole('button', { name: 'Keep this noise' }).click()
  await row.getByText(/^gauge check/).waitFor()
  await row.getByText('0.71', { exact: true }).waitFor()
  expect(await axeFindings(page)).toEqual([])

  await page.getByRole('button', { name: 'Remove bench' }).click()
  await page.getByText('No instrument yet.').waitFor()
})

test('the measures that are chosen stand first in the calculators, with the usual values', async () => {
  const page = await opened()
  await page.getByRole('radio', { name: /^US/ }).check()
  await page.getByText('Kept.').first().waitFor()
  await page.getByRole('textbox', { name: 'Scale reads to' }).fill('0,01')
  await page.getByRole('button', { name: 'Keep these values' }).click()
  await page.getByRole('region', { name: 'Usual values' }).getByText('Kept.').waitFor()
  await page.goto('/calculators/depth-and-stock')
  expect(await page.getByRole('combobox', { name: 'Unit of dry yarn' }).inputValue()).toBe('oz')
  expect(await page.getByRole('textbox', { name: 'Scale reads to' }).inputValue()).toBe('0.01')
})

test('a usual value that cannot be is refused beside its field, and stays as typed', async () => {
  const page = await opened({ expected: refusal })
  const stock = page.getByRole('textbox', { name: 'Stock' })
  await stock.fill('lots')
  await page.getByRole('button', { name: 'Keep these values' }).click()
  await page.getByRole('alert').waitFor()
  expect(await page.evaluate(() => document.activeElement?.getAttribute('role'))).toBe('alert')
  expect(await stock.inputValue()).toBe('lots')
  expect(await stock.getAttribute('aria-invalid')).toBe('true')
})

test('a refusal’s own address says what to do', async () => {
  const { page } = await tool.newPage()
  await page.goto('/problems/version-missing')
  await page.getByRole('heading', { level: 1, name: 'Say which version you saw' }).waitFor()
  await page.getByRole('row', { name: /^still-in-use/ }).waitFor()
})
