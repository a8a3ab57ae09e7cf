import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { axeFindings } from '#test/support/axe-findings.ts'
import { toolInBrowser } from '#test/support/tool-in-browser.ts'
import { calculators } from '#web/pages/calculators/calculators.ts'

const tool = toolInBrowser()
const phone = { width: 360, height: 740 }
const desk = { width: 1280, height: 800 }

async function opened(
  path: string,
  viewport = phone,
): Promise<{ page: Page; complaints: readonly string[] }> {
  const { page, complaints } = await tool.newPage({ viewport })
  await page.goto(path)
  await page.getByRole('heading', { level: 1 }).waitFor()
  return { page, complaints }
}

const box = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true })
const answer = (page: Page, name: string) => page.getByRole('region', { name, exact: true })

// 340 g at 1 % of a 1 % stock take 340 mL of it, and at 30 mL/g a bath of 10.2 L.
test('depth and stock answer as one types, with a decimal comma, and keep what was typed', async () => {
  const { page, complaints } = await opened('/calculators/depth-and-stock')
  const take = answer(page, 'Take')
  await take.getByText('Waits for the dry yarn and the depth').waitFor()
  await box(page, 'Dry yarn').fill('340')
  await box(page, 'Depth of shade').fill('1,0')
  await take.getByText('340', { exact: true }).waitFor()
  expect(await take.getByRole('definition').allTextContents()).toEqual(['3.4 g', '340 mL', '10.2 L'])
  await take.getByText('Mask on for powder').waitFor()

  await box(page, 'Depth of shade').fill('a good deal')
  await take.getByText('Waits for the depth').waitFor()
  expect(await box(page, 'Depth of shade').inputValue()).toBe('a good deal')
  expect(await box(page, 'Depth of shade').getAttribute('aria-invalid')).toBe('true')

  await page.getByRole('link', { name: 'Calculators', exact: true }).last().click()
  await page.getByRole('heading', { level: 1, name: 'Calculators' }).waitFor()
  await page.getByRole('link', { name: 'Depth and stock' }).click()
  await box(page, 'Dry yarn').waitFor()
  expect(await box(page, 'Dry yarn').inputValue()).toBe('340')
  expect(complaints).toEqual([])
})

test('a strength of 50 % is refused with its mend, and a great deal of vinegar is asked about', async () => {
  const { page, complaints } = await opened('/calculators/acid-and-start-ph')
  const start = answer(page, 'Start pH')
  await box(page, 'Vinegar').fill('510')
  await box(page, 'Strength').fill('50')
  await box(page, 'Bath').fill('10,2')
  await box(page, 'Dry yarn').fill('340')
  await start.getByText('Waits for the strength and the water').waitFor()
  await page.getByRole('button', { name: 'Make it 5 %' }).click()
  await start.getByText('Waits for the water').waitFor()
  await page.getByText('Vinegar 150 mL per 100 g is three times the usual.').waitFor()
  await page.getByRole('button', { name: 'Keep it' }).click()
  await page.getByText('three times the usual').waitFor({ state: 'detached' })
  await box(page, 'Water').fill('180')
  await start.getByText(/^About 3\.\d$/).waitFor()
  await start.getByText('as a table').focus()
  await page.keyboard.press('Enter')
  await start.getByRole('columnheader', { name: 'your water, 180' }).waitFor()
  expect(await axeFindings(page)).toEqual([])
  expect(complaints).toEqual([])
})

test('three quarters of a US cup are read as a fraction, and three pasted numbers as a colour', async () => {
  const { page } = await opened('/calculators/acid-and-start-ph')
  await page.getByRole('combobox', { name: 'Unit of vinegar' }).selectOption('cup (US)')
  await box(page, 'Vinegar').fill('¾')
  await page.getByText('counts as 177 mL; kept as ¾ cup (US)').waitFor()

  await page.goto('/calculators/grade')
  // A pair of the test data for the A05 formula: rating 3.09, grade 3.
  await page.getByRole('group', { name: 'Before' }).getByRole('textbox', { name: 'L*' }).fill('45; 25; −7')
  await page.getByRole('group', { name: 'After' }).getByRole('textbox', { name: 'L*' }).fill('47 22 -6')
  const grade = answer(page, 'Grade for change in colour')
  await grade.getByText('3', { exact: true }).waitFor()
  await grade.getByText(/calculated from CIELAB \(A05 formula\): 3\.09/).waitFor()
})

test('at the stove every thing to press is 48 px high, and the answer can be copied by keyboard', async () => {
  const { page } = await opened('/calculators/depth-and-stock')
  await box(page, 'Dry yarn').fill('100')
  await box(page, 'Depth of shade').fill('2')
  const heights = await page
    .getByRole('main')
    .locator('a, button, .field-box')
    .evaluateAll((things) => things.map((thing) => thing.getBoundingClientRect().height))
  expect(Math.min(...heights)).toBeGreaterThanOrEqual(48)
  await page.getByRole('button', { name: 'Copy' }).focus()
  await page.keyboard.press('Enter')
  await page.getByText(/Copied\.|Mark and copy by hand/).waitFor()
})

test('what was worked out is held the same in a trial', async () => {
  const { page } = await opened('/calculators/depth-and-stock')
  await box(page, 'Dry yarn').fill('100')
  await box(page, 'Depth of shade').fill('1,5')
  await page.request.post('/api/trials', { data: { title: 'Steam, teal', question: 'How short?' } })
  await page.getByRole('button', { name: 'Use in a trial' }).click()
  await page.getByRole('combobox', { name: 'Hold it the same in' }).selectOption('Steam, teal')
  await page.getByRole('button', { name: 'Hold it the same' }).click()
  await page.getByText('Kept in Steam, teal.').waitFor()
  const { items } = await (await page.request.get('/api/trials')).json()
  expect(items.at(-1).held).toContainEqual({ key: 'depth', value: '1.5 %' })
})

const pages: readonly (readonly [title: string, path: string])[] = [
  ['Calculators', '/calculators'],
  ...calculators.map(({ title, name }) => [title, `/calculators/${name}`] as const),
  ['Settings', '/settings'],
  ['How it is worked out', '/method'],
  ['Some of this cannot be kept as it is', '/problems/at-fault'],
]
test.each(pages)(
  'axe finds nothing on %s, at %s, narrow and wide, light and dark, and nothing sticks out',
  async (title, path) => {
    const { page } = await opened(path)
    expect(await page.getByRole('heading', { level: 1 }).allTextContents()).toEqual([title])
    for (const [viewport, colorScheme] of [
      [phone, 'light'],
      [desk, 'dark'],
    ] as const) {
      await page.setViewportSize(viewport)
      await page.emulateMedia({ colorScheme })
      expect(await axeFindings(page)).toEqual([])
      expect(
        await page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        ),
      ).toBe(0)
    }
  },
)
