import type { Page } from 'playwright-core'
import { beforeAll, describe, expect, test } from 'vitest'
import { exampleTrials } from '#db/sample-trials/example-trials.ts'
import { axeFindings } from '#test/support/axe-findings.ts'
import { toolInBrowser } from '#test/support/tool-in-browser.ts'

const tool = toolInBrowser()
const [phone, desk] = [
  { width: 360, height: 740 },
  { width: 1280, height: 800 },
]

/** All that is wrong with the page of this title, at both widths, light and dark. */
async function faultsOf(page: Page, title: string): Promise<string[]> {
  await page.waitForFunction((wanted) => document.title === wanted, `${title} · Runs Clear`)
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

test('home of an empty studio: axe finds nothing', async () => {
  await tool.empty()
  const { page } = await tool.newPage({ viewport: desk })
  await page.goto('/')
  await page.getByRole('button', { name: 'Open the example studio' }).waitFor()
  expect(await faultsOf(page, 'Nothing on the bench yet')).toEqual([])
})

const ladderQuestion = 'How short can steaming be?'

test.each(['Plan', 'Readings', 'Findings', 'Evidence'])(
  '%s of a trial just begun: axe finds nothing',
  async (part) => {
    const { page } = await tool.newPage({ viewport: desk })
    await page.goto('/start?pattern=P1')
    await page.getByRole('button', { name: 'Start this trial' }).click()
    await page.waitForURL(/\/plan$/)
    await page.goto(page.url().replace(/plan$/, part.toLowerCase()))
    expect(await faultsOf(page, `${ladderQuestion} ${part}`)).toEqual([])
  },
)

describe('with the example studio', () => {
  const trials = new Map<string, string>()
  beforeAll(async () => {
    await tool.empty()
    const answer = await fetch(`${tool.url}/api/example-studio`, { method: 'POST' })
    expect(answer.status).toBe(200)
    const { trialIds } = (await answer.json()) as { trialIds: string[] }
    expect(trialIds).toHaveLength(exampleTrials.length)
    for (const [place, { question }] of exampleTrials.entries()) trials.set(question, trialIds[place] ?? '')
  })
  const [ladder = '', acid = '', claims = '', lesson = ''] = exampleTrials.map(({ question }) => question)

  type Row = readonly [title: string, address: string, ofTrial?: string]
  const rows: readonly Row[] = [
    ['Home', '/'],
    ['Start a trial', '/start'],
    ...['Plan', 'Readings', 'Findings', 'Evidence'].map(
      (part): Row => [`${ladder} ${part}`, `/trials/:id/${part.toLowerCase()}`, ladder],
    ),
    ['35 minutes of steam is enough.', '/sheets/trials/:id', ladder],
    [`${acid} Findings`, '/trials/:id/findings', acid],
    [
      'On superwash wool, 30 mL of vinegar per 100 g is enough. On wool/nylon 80/20, 30 mL of vinegar per 100 g is enough. On silk, not reached: 120 mL of vinegar per 100 g, the most that was tried, is not enough.',
      '/sheets/trials/:id',
      acid,
    ],
    [`${claims} Findings`, '/trials/:id/findings', claims],
    [
      'Oat, lichen and brick pass: 3 of 3 lots each; plum fails: staining 3-4 (lot A); slate fails: staining 3-4 (lot A); deep turquoise fails: staining 2-3 (lot A) (dates not recorded).',
      '/sheets/trials/:id',
      claims,
    ],
    [`${lesson} Findings`, '/trials/:id/findings', lesson],
    [
      'Two doses is better than all at start; four doses is better than all at start (dates not recorded).',
      '/sheets/trials/:id',
      lesson,
    ],
    ['Calculators', '/calculators'],
    ['Colour difference', '/calculators/colour-difference'],
    ['Settings', '/settings'],
    ['How it is worked out', '/method'],
    ['Some of this cannot be kept as it is', '/problems/at-fault'],
    ['There is nothing at this address', '/nothing-is-here'],
  ]

  const pages = rows.map(([title, address, question = '']) => [title, address, question] as const)
  test.each(pages)('%s, at %s: axe finds nothing', async (title, address, question) => {
    const { page } = await tool.newPage({ viewport: desk })
    await page.goto(address.replace(':id', trials.get(question) ?? ''))
    expect(await faultsOf(page, title)).toEqual([])
  })
})
