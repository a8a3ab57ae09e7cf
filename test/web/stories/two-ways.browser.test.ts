import { diff } from 'color-diff'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { toolInBrowser } from '#test/support/tool-in-browser.ts'
import { answer, keepAndOpen, partLink, pasteTable } from '#test/support/trial-screens.ts'

const tool = toolInBrowser()

type Pair = readonly [L0: number, a0: number, b0: number, L1: number, a1: number, b1: number]

/** Invented readings of the two ways in four sessions, before and after three warm hand washes. */
const read: Readonly<Record<string, readonly Pair[]>> = {
  overnight: [
    [36.0, -14.2, -14.2, 36.9, -13.8, -13.7],
    [36.4, -14.5, -14.3, 37.1, -14.1, -13.9],
    [36.3, -14.1, -14.4, 37.2, -13.7, -13.8],
    [35.9, -14.4, -14.3, 36.6, -14.0, -13.9],
  ],
  'one hour': [
    [36.2, -14.0, -14.1, 37.3, -13.5, -13.4],
    [36.1, -14.3, -14.0, 37.2, -13.9, -13.5],
    [36.5, -14.6, -14.2, 37.4, -14.0, -13.6],
    [36.2, -14.2, -14.1, 37.2, -13.8, -13.5],
  ],
}
/** An unwashed twin of each session, measured again with the others: to and fro, with no drift in common. */
const twins: readonly Pair[] = [
  [36.0, -14.2, -14.2, 36.2, -14.2, -14.2],
  [36.3, -14.4, -14.1, 36.1, -14.4, -14.1],
  [36.1, -14.1, -14.3, 36.1, -14.0, -14.2],
  [36.2, -14.3, -14.2, 36.2, -14.4, -14.3],
]

const lossOf = ([L0, a0, b0, L1, a1, b1]: Pair): number =>
  diff({ L: L0, a: a0, b: b0 }, { L: L1, a: a1, b: b1 })

/** The measuring error: twice the variance within twins, of four less one for the drift in common, and its upper 80 % limit. */
function measuringError(): { r: number; upper: number } {
  const squares = twins.reduce((sum, [L0, a0, b0, L1, a1, b1]) => {
    const mean = { L: (L0 + L1) / 2, a: (a0 + a1) / 2, b: (b0 + b1) / 2 }
    return sum + diff(mean, { L: L0, a: a0, b: b0 }) ** 2 + diff(mean, { L: L1, a: a1, b: b1 }) ** 2
  }, 0)
  const meanSquare = (2 * squares) / 3
  // The 20 % point of chi-squared with 9 degrees of freedom, 5.380 in any printed table.
  return { r: Math.sqrt(meanSquare), upper: Math.sqrt((9 * meanSquare) / 5.38) }
}

/** By another library’s CIEDE2000 and Student’s t of 95 % with 3 degrees of freedom, 2.3534 in any printed table. */
function expected(): { mean: string; from: string; to: string } {
  const interval = (error: number) => {
    const net = (pair: Pair) => Math.sqrt(Math.max(0, lossOf(pair) ** 2 - error ** 2))
    const usual = (read.overnight ?? []).map(net)
    const extra = (read['one hour'] ?? []).map((pair, session) => net(pair) - (usual[session] ?? Number.NaN))
    const mean = extra.reduce((sum, value) => sum + value, 0) / extra.length
    const spread = Math.sqrt(extra.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (extra.length - 1))
    const half = (2.3534 * spread) / Math.sqrt(extra.length)
    return { mean, from: mean - half, to: mean + half }
  }
  const { r, upper } = measuringError()
  const [raw, net, netOfUpper] = [interval(0), interval(r), interval(upper)]
  return {
    mean: raw.mean.toFixed(2),
    from: Math.min(raw.from, net.from).toFixed(2),
    to: Math.max(raw.to, net.to, netOfUpper.to).toFixed(2),
  }
}

/** The bench sheet, as one reads it: which skein was given which way. */
async function drawn(page: Page): Promise<{ code: string; way: string }[]> {
  const rows = await page
    .getByRole('row')
    .evaluateAll((all) => all.map((row) => [...row.querySelectorAll('td')].map((cell) => cell.textContent)))
  return rows.flatMap((cells) => {
    const [, way = '', codes = ''] = cells
    return way in read ? codes.split(', ').map((code) => ({ code, way })) : []
  })
}

test('a way and its shortcut are tried side by side, from the question to the verdict', async () => {
  const { page, complaints } = await tool.newPage()
  await page.goto('/')
  await page.getByRole('link', { name: 'Ask my own question' }).click()
  await page.getByLabel('What kind of trial').selectOption({ label: 'Two ways side by side' })
  await page.getByLabel('Your question').fill('Is one hour of cooling as good as a night?')
  await page.getByLabel('What you call it').fill('cooling')
  await page.getByLabel('Level 1', { exact: true }).fill('overnight')
  await page.getByLabel('Level 2', { exact: true }).fill('one hour')
  await page.getByRole('button', { name: 'Start this trial' }).click()

  await page.getByRole('heading', { level: 1, name: 'Is one hour of cooling as good as a night?' }).waitFor()
  await page.getByLabel('Sessions').fill('4')
  await page.getByText('each level counts 4').waitFor()
  await page.getByLabel('Seed of the draw').fill('11')
  await page.getByRole('button', { name: 'Lock the rule' }).click()
  await page.getByText(/^Rule locked .*, before the first reading\.$/).waitFor()
  await page.getByRole('button', { name: 'Draw places by lot' }).click()
  await page.getByRole('heading', { name: 'Places, drawn by lot' }).waitFor()
  const skeins = await drawn(page)
  expect(
    skeins
      .filter(({ code }) => !code.includes('twin'))
      .map(({ way }) => way)
      .sort(),
  ).toEqual([...Array(4).fill('one hour'), ...Array(4).fill('overnight')])

  // The way of each skein stands in the plan, so that the table of readings need not say it again.
  const table = skeins.map(({ code, way }) => {
    const session = Number(code.split('-')[0]) - 1
    const values = (code.includes('twin') ? twins : read[way])?.[session]
    return [code, ...(values ?? [])].join(',')
  })
  await pasteTable(page, ['skein,L0,a0,b0,L1,a1,b1', ...table].join('\n'))
  await answer(page, 'What lies between before and after?', 'warm hand washes', 3)
  await page.getByRole('radio', { name: 'Yes, its own' }).check()
  await keepAndOpen(page, skeins.length)

  await page.getByText('One hour is as good as overnight (dates not recorded).', { exact: true }).waitFor()
  const finding = (await page.getByRole('main').textContent()) ?? ''
  const { mean, from, to } = expected()
  expect(finding).toContain(
    `Against overnight it changed by ${from} to ${to} ΔE00 more (90\u00a0% interval, mean ${mean}). You allowed 1.0.`,
  )
  expect(finding).toContain('8 skeins from 8 jars in 4 sessions.')
  expect(finding).toContain('4 twins of this trial')

  // A twin lay in no wash: it was read again with the others, untouched.
  await partLink(page, 'Readings').click()
  await page.getByText('24 readings in 2 sittings.').waitFor()
  const rows = page.getByRole('table').getByRole('row')
  expect(await rows.filter({ hasText: / twin/ }).filter({ hasText: 'untouched' }).count()).toBe(8)

  await partLink(page, 'Findings').click()
  await page.reload()
  await page.getByText('One hour is as good as overnight (dates not recorded).', { exact: true }).waitFor()
  expect(complaints).toEqual([])
})
