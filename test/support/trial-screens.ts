import type { Locator, Page } from 'playwright-core'

/** The word of a part of a trial, in its line of parts. */
export const partLink = (page: Page, part: string): Locator =>
  page.getByRole('navigation', { name: 'Parts of this trial' }).getByRole('link', { name: part })

/** What a pasted table is asked once, and the two boxes of its answer. */
export function question(page: Page, words: string): { what: Locator; howMany: Locator } {
  const group = page.getByRole('group', { name: words })
  return { what: group.getByLabel('What'), howMany: group.getByLabel('How many') }
}

/** Pastes a table into the readings of a trial and goes on to match its columns. */
export async function pasteTable(page: Page, text: string): Promise<void> {
  await partLink(page, 'Readings').click()
  await page.getByLabel('Rows from a spreadsheet').fill(text)
  await page.getByRole('button', { name: 'Match the columns' }).click()
  await page.getByRole('heading', { name: 'What the rows say' }).waitFor()
}

/** Says after what a result was read, or what lies between before and after. */
export async function answer(page: Page, words: string, what: string, howMany: number): Promise<void> {
  const boxes = question(page, words)
  await boxes.what.selectOption({ label: what })
  await boxes.howMany.fill(String(howMany))
}

/** Keeps the table whose questions are answered, and opens what it shows. */
export async function keepAndOpen(page: Page, rows: number): Promise<void> {
  await page.getByRole('button', { name: `Keep all ${rows} rows` }).click()
  await page.getByRole('heading', { name: `${rows} rows kept` }).waitFor()
  await page.getByRole('link', { name: 'Open the findings' }).click()
}
