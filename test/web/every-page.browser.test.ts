import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { exampleTrials } from '#db/sample-trials/example-trials.ts'
import { axeFindings } from '#test/support/axe-findings.ts'
import { toolInBrowser } from '#test/support/tool-in-browser.ts'

const tool = toolInBrowser()
const [phone, desk] = [
  { width: 360, height: 740 },
  { width: 1280, height: 800 },
]

/** All that is wrong with a page as it stands, at both widths, light and dark. */
async function faultsOf(page: Page): Promise<string[]> {
  await page.getByRole('heading', { level: 1 }).first().waitFor()
  await page.waitForLoadState('networkidle')
  const faults: string[] = []
  for (const size of [desk, phone]) {
    await page.setViewportSize(size)
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' })
      await drawn(page)
      for (const found of await axeFindings(page)) faults.push(`${size.width} ${colorScheme}, ${found}`)
    }
    const beyond = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    )
    if (beyond > 0) faults.push(`${size.width}: it is ${beyond} px wider than the window`)
  }
  const titles = await page.getByRole('heading', { level: 1 }).count()
  if (titles !== 1) faults.push(`${titles} headings of level 1`)
  return faults
}

/** Pictures are drawn anew for another width or scheme: in the frame after the next they stand. */
async function drawn(page: Page): Promise<void> {
  await page.evaluate(
    () => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
  )
}

/** The address of each trial by its question: the example studio opened by its button, and a trial begun. */
let addresses: Promise<ReadonlyMap<string, string>> | undefined
const begun = 'a trial just begun'

async function openStudio(page: Page): Promise<ReadonlyMap<string, string>> {
  await page.goto('/')
  await page.getByRole('button', { name: 'Open the example studio' }).click()
  const open = page.getByRole('region', { name: 'Open trials' })
  const found = new Map<string, string>()
  for (const { question } of exampleTrials)
    found.set(question, (await open.getByRole('link', { name: question }).getAttribute('href')) ?? '')
  await page.goto('/start?pattern=P1')
  await page.getByRole('button', { name: 'Start this trial' }).click()
  await page.waitForURL(/\/plan$/)
  return found.set(begun, new URL(page.url()).pathname.replace(/\/plan$/, ''))
}

test('home of an empty studio: axe finds nothing', async () => {
  const { page, complaints } = await tool.newPage({ viewport: desk })
  await page.goto('/')
  await page.getByRole('button', { name: 'Open the example studio' }).waitFor()
  expect(await faultsOf(page)).toEqual([])
  expect(complaints).toEqual([])
})

const [ladder = '', acid = '', claims = '', lesson = ''] = exampleTrials.map(({ question }) => question)
const sheet = (trial: string) => `/sheets${trial}`

const pages: readonly [name: string, address: string | ((of: (question: string) => string) => string)][] = [
  ['home with the example studio', '/'],
  ['start', '/start'],
  ['the plan of a trial just begun', (of) => `${of(begun)}/plan`],
  ['readings before the first', (of) => `${of(begun)}/readings`],
  ['findings before the first reading', (of) => `${of(begun)}/findings`],
  ['evidence before the first reading', (of) => `${of(begun)}/evidence`],
  ['the plan of a ladder', (of) => `${of(ladder)}/plan`],
  ['the readings of a ladder', (of) => `${of(ladder)}/readings`],
  ['the findings of a ladder', (of) => `${of(ladder)}/findings`],
  ['the evidence of a ladder', (of) => `${of(ladder)}/evidence`],
  ['the sheet of a ladder', (of) => sheet(of(ladder))],
  ['the findings of an acid ladder', (of) => `${of(acid)}/findings`],
  ['the sheet of an acid ladder', (of) => sheet(of(acid))],
  ['the findings of claims by lot', (of) => `${of(claims)}/findings`],
  ['the sheet of claims by lot', (of) => sheet(of(claims))],
  ['the findings of a class', (of) => `${of(lesson)}/findings`],
  ['the sheet of a class', (of) => sheet(of(lesson))],
  ['calculators', '/calculators'],
  ['a calculator', '/calculators/colour-difference'],
  ['settings', '/settings'],
  ['method', '/method'],
  ['a problem', '/problems/at-fault'],
  ['not found', '/nothing-is-here'],
]

test.each(pages)('%s: axe finds nothing', async (_, address) => {
  const { page, complaints } = await tool.newPage({ viewport: desk })
  addresses ??= openStudio(page)
  const known = await addresses
  await page.goto(typeof address === 'string' ? address : address((question) => known.get(question) ?? ''))
  expect(await faultsOf(page)).toEqual([])
  expect(complaints).toEqual([])
})
