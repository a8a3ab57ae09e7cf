import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { axeFindings } from '#test/support/axe-findings.ts'
import { type PageOptions, toolInBrowser } from '#test/support/tool-in-browser.ts'

const tool = toolInBrowser()
const desk = { width: 1280, height: 800 }
const phone = { width: 360, height: 740 }

async function opened(address: string, options: PageOptions = {}): Promise<Page> {
  const { page } = await tool.newPage({ viewport: desk, ...options })
  await page.goto(address)
  await page.getByRole('heading', { level: 1 }).waitFor()
  return page
}

const widthBeyond = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)

test('a page has one h1, which names the window, and the landmarks', async () => {
  const page = await opened('/nowhere')
  expect(await page.getByRole('heading', { level: 1 }).count()).toBe(1)
  expect(await page.title()).toBe('There is nothing at this address · Runs Clear')
  for (const landmark of ['banner', 'main', 'contentinfo'] as const)
    expect(await page.getByRole(landmark).count()).toBe(1)
  expect(await page.getByRole('navigation', { name: 'Places' }).isVisible()).toBe(true)
})

test('changing the page brings the focus to its heading; the first page leaves it alone', async () => {
  const page = await opened('/nowhere')
  expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('BODY')
  await page.getByRole('main').getByRole('link', { name: 'Go home' }).click()
  await page.waitForURL((url) => url.pathname === '/')
  await page.waitForFunction(() => document.activeElement?.tagName === 'H1')
  expect(await page.getByRole('link', { name: 'Home', exact: true }).getAttribute('aria-current')).toBe(
    'page',
  )
})

test('the first stop of the keyboard is the way past the bar', async () => {
  const page = await opened('/nowhere')
  await page.keyboard.press('Tab')
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Skip to the page')
  await page.keyboard.press('Enter')
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('main')
})

test('on a phone the places stand behind the word “Menu”, and the keyboard opens and closes them', async () => {
  const page = await opened('/nowhere', { viewport: phone })
  const menu = page.getByRole('button', { name: 'Menu' })
  const home = page.getByRole('link', { name: 'Home', exact: true })
  expect(await home.isVisible()).toBe(false)
  await menu.focus()
  await page.keyboard.press('Enter')
  expect(await menu.getAttribute('aria-expanded')).toBe('true')
  expect(await home.isVisible()).toBe(true)
  await home.focus()
  await page.keyboard.press('Escape')
  expect(await home.isVisible()).toBe(false)
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Menu')
})

test('on a phone every thing to press is at least 44 px high', async () => {
  const page = await opened('/nowhere', { viewport: phone })
  await page.getByRole('button', { name: 'Menu' }).click()
  const heights = await page
    .locator('header')
    .locator('a, button')
    .evaluateAll((things) => things.map((thing) => thing.getBoundingClientRect().height))
  expect(Math.min(...heights)).toBeGreaterThanOrEqual(44)
})

test.each([
  ['light', desk],
  ['dark', desk],
  ['light', phone],
  ['dark', { width: 320, height: 640 }],
] as const)('axe finds nothing in %s at %o, and nothing sticks out', async (colorScheme, viewport) => {
  const page = await opened('/nowhere', { colorScheme, viewport })
  expect(await axeFindings(page)).toEqual([])
  expect(await widthBeyond(page)).toBe(0)
})

test('with letters twice as large nothing sticks out of a narrow window', async () => {
  const page = await opened('/nowhere', { viewport: { width: 640, height: 800 } })
  await page.addStyleTag({ content: 'html { font-size: 200% }' })
  expect(await widthBeyond(page)).toBe(0)
})

test('the letters come from the tool itself, and their licence with them', async () => {
  const page = await opened('/nowhere')
  expect(
    await page.evaluate(() =>
      document.fonts.ready.then(() => document.fonts.check('500 17px "Ysabeau Office"')),
    ),
  ).toBe(true)
  const licence = await page.getByRole('link', { name: 'its licence' }).getAttribute('href')
  const answer = await page.request.get(new URL(licence ?? '', page.url()).href)
  expect(answer.headers()['content-type']).toContain('text/plain')
  expect(await answer.text()).toContain('SIL OPEN FONT LICENSE')
})
