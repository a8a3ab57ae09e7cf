import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { axeFindings } from '#test/support/axe-findings.ts'
import { type PageOptions, refusal, toolInBrowser } from '#test/support/tool-in-browser.ts'

const tool = toolInBrowser()

async function open(address: string, options: PageOptions = {}): Promise<Page> {
  const { page } = await tool.newPage(options)
  await page.goto(address)
  return page
}

test('home begins with a doubt, and the example studio opens into open trials and a newest finding', async () => {
  await tool.empty()
  const page = await open('/')
  await page.getByRole('heading', { level: 1, name: 'Nothing on the bench yet' }).waitFor()
  await page.getByRole('link', { name: 'How short can steaming be?' }).waitFor()
  await page.getByRole('button', { name: 'Open the example studio' }).click()
  await page.getByRole('heading', { name: 'Open trials' }).waitFor()
  const ladder = page.getByRole('listitem').filter({ hasText: 'How short can steaming be?' })
  await ladder.getByText('4 sessions · 24 of 24 skeins read · invented').waitFor()
  await ladder.getByText('35 minutes of steam is enough').waitFor()
  await page
    .getByRole('region', { name: 'Newest finding' })
    .getByText('35 minutes of steam is enough.')
    .waitFor()
})

test('a trial of two ways is started, planned, its rule locked and its places drawn', async () => {
  const page = await open('/start?pattern=P4')
  await page.getByLabel('Your question').fill('Is one hour of cooling enough?')
  await page.getByLabel('What you call it').fill('cooling')
  await page.getByLabel('Level 1', { exact: true }).fill('overnight')
  await page.getByLabel('Level 2', { exact: true }).fill('one hour')
  await page.getByRole('button', { name: 'Start this trial' }).click()

  await page.getByRole('heading', { level: 1, name: 'Is one hour of cooling enough?' }).waitFor()
  await page.getByText('overnight reference').waitFor()
  await page.getByText('If one hour is truly as good as overnight').waitFor()
  await page.getByText('each level counts 6').waitFor()

  await page.getByLabel('Margin', { exact: true }).fill('1,5')
  await page.getByRole('button', { name: 'Keep this rule' }).click()
  await page.getByText('Edition 1, not locked').waitFor()
  await page.getByRole('button', { name: 'Lock the rule' }).click()
  await page.getByText(/^Rule locked .*, before the first reading\.$/).waitFor()
  expect(await page.getByRole('button', { name: 'Keep as edition 2' }).count()).toBe(0)

  await page.getByRole('button', { name: 'Draw places by lot' }).click()
  await page.getByRole('heading', { name: 'Places, drawn by lot' }).waitFor()
  const sixth = page.getByRole('region', { name: 'Session 6', exact: true })
  expect(await sixth.getByRole('row').count()).toBe(3)
  await page.getByText(/^Drawn by lot with the seed \d+\./).waitFor()
})

test('three skeins in a packet are said to be one, and the better bench is one press away', async () => {
  const page = await open('/start?pattern=P1')
  await page.getByRole('button', { name: 'Start this trial' }).click()
  await page.getByLabel('Skeins per packet').fill('3')
  await page.getByLabel('Sessions').fill('2')
  await page.getByText('Three skeins in one packet are one.').waitFor()
  await page.getByText('each level counts 2, not 6').waitFor()
  await page.getByRole('button', { name: 'Plan it so' }).click()
  await page.getByText('each level counts 4').waitFor()
  expect(await page.getByLabel('Skeins per packet').inputValue()).toBe('1')
  expect(await page.getByText('Three skeins in one packet are one.').count()).toBe(0)
})

test('a later edition asks for its reason, and what was typed stays when it is missing', async () => {
  const page = await open('/start?pattern=P1', { expected: refusal })
  await page.getByRole('button', { name: 'Start this trial' }).click()
  await page.getByRole('button', { name: 'Lock the rule' }).click()
  await page.getByText(/^Rule locked/).waitFor()
  await page.getByLabel('Margin', { exact: true }).fill('0.8')
  await page.getByRole('button', { name: 'Keep as edition 2' }).click()
  await page.getByText('This is edition 2: give the reason for the change.').waitFor()
  expect(await page.getByLabel('Margin', { exact: true }).inputValue()).toBe('0.8')
  await page.getByLabel('Why edition 2').fill('buyers see less than 1')
  await page.getByRole('button', { name: 'Keep as edition 2' }).click()
  await page.getByText('Edition 2, not locked: buyers see less than 1').waitFor()
})

test('a ladder is asked, changed, locked and drawn by keyboard alone', async () => {
  const page = await open('/start?pattern=P1')
  await page.getByRole('heading', { level: 1 }).waitFor()
  const press = (key: string) => page.keyboard.press(key)
  /** Tab by Tab until the thing of this name has the focus. */
  const until = async (name: string): Promise<void> => {
    for (let step = 0; step < 120; step++) {
      await press('Tab')
      const names = await page.evaluate(() => {
        const at = document.activeElement
        const label = at?.id ? document.querySelector(`label[for="${CSS.escape(at.id)}"]`) : null
        return [at?.getAttribute('aria-label'), label?.textContent, at?.textContent?.trim()]
      })
      if (names.includes(name)) return
    }
    throw new Error(`“${name}” was not reached by keyboard.`)
  }
  await until('Your question')
  await press('Control+A')
  await page.keyboard.type('How short, by keyboard?')
  await until('Level 6')
  await press('Enter')
  await page.keyboard.type('90')
  await press('Enter')
  // An empty level is taken away again with Backspace.
  await press('Backspace')
  await until('Start this trial')
  await press('Enter')
  await page.getByRole('heading', { level: 1, name: 'How short, by keyboard?' }).waitFor()
  await page.getByText('each level counts 4').waitFor()
  await until('Lock the rule')
  await press('Enter')
  await page.getByText(/^Rule locked/).waitFor()
  await until('Draw places by lot')
  await press('Enter')
  await page.getByRole('heading', { name: 'Places, drawn by lot' }).waitFor()
  const first = page.getByRole('region', { name: 'Session 1', exact: true })
  expect(await first.getByText('90 min').count()).toBe(1)

  await page.goto('/')
  const due = page.getByRole('link', {
    name: /^Bench sheet: Session 1 at the stove, How short, by keyboard\?/,
  })
  await due.focus()
  await press('Enter')
  await page.getByRole('heading', { name: 'Places, drawn by lot' }).waitFor()
})

test.each([
  [360, 'light'],
  [360, 'dark'],
  [1280, 'light'],
  [1280, 'dark'],
] as const)('at %i px, %s, axe finds nothing on home, start and plan', async (width, colorScheme) => {
  await tool.empty()
  const { page } = await tool.newPage({ viewport: { width, height: 900 }, colorScheme })
  for (const [address, title, asked] of [
    ['/', 'Nothing on the bench yet', ''],
    ['/start?pattern=P4', 'Start a trial', 'Is the shortcut as good as the usual way?'],
    ['/start?pattern=P1', 'Start a trial', 'How short can steaming be?'],
  ] as const) {
    await page.goto(address)
    await page.waitForFunction((wanted) => document.title === wanted, `${title} · Runs Clear`)
    if (asked) expect(await page.getByLabel('Your question').inputValue()).toBe(asked)
    expect(await axeFindings(page)).toEqual([])
  }
  await page.getByRole('button', { name: 'Start this trial' }).click()
  await page.getByLabel('Skeins per packet').fill('3')
  await page.getByText('Three skeins in one packet are one.').waitFor()
  expect(await axeFindings(page)).toEqual([])
})
