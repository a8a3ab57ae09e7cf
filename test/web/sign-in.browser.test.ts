import { expect, test } from 'vitest'
import { axeFindings } from '#test/support/axe-findings.ts'
import { refusal, toolInBrowser } from '#test/support/tool-in-browser.ts'

const tool = toolInBrowser({ environment: { ACCESS_PHRASE: 'four blue skeins' } })

test('whoever opens a page signs in first, and then sees that page', async () => {
  const { page } = await tool.newPage({ expected: refusal, viewport: { width: 360, height: 740 } })
  await page.goto('/settings')
  await page.getByRole('heading', { name: 'Sign in', level: 1 }).waitFor()
  expect(await page.getByRole('heading', { level: 1 }).count()).toBe(1)
  expect(await axeFindings(page)).toEqual([])

  await page.getByLabel('Access phrase').fill('five blue skeins')
  await page.getByRole('button', { name: 'Sign in' }).click()
  await page.getByText('This is not the access phrase. Capitals count.').waitFor()
  expect(await page.getByLabel('Access phrase').inputValue()).toBe('five blue skeins')
  expect(await page.getByLabel('Access phrase').getAttribute('aria-invalid')).toBe('true')
  expect(await axeFindings(page)).toEqual([])

  await page.getByLabel('Access phrase').fill('four blue skeins')
  await page.getByLabel('Access phrase').press('Enter')
  await page.getByRole('heading', { name: 'Settings', level: 1 }).waitFor()
  await page.getByRole('radio', { name: /^US/ }).waitFor()
  await page.reload()
  await page.getByRole('radio', { name: /^US/ }).waitFor()
  // The cookie is nothing that a script sees.
  expect(await page.evaluate(() => document.cookie)).toBe('')
})

test('what was typed is still there when the session ended in between', async () => {
  const { page } = await tool.newPage({ expected: refusal })
  await page.goto('/sign-in')
  await page.getByLabel('Access phrase').fill('four blue skeins')
  await page.getByRole('button', { name: 'Sign in' }).click()
  await page.waitForURL((url) => url.pathname === '/')
  await page.goto('/start?pattern=P1')
  await page.getByLabel('A short name').fill('Silver grey')
  await page.context().clearCookies()
  await page.getByRole('button', { name: 'Start this trial' }).click()
  await page.getByLabel('Access phrase').fill('four blue skeins')
  await page.getByRole('button', { name: 'Sign in' }).click()
  expect(await page.getByLabel('A short name').inputValue()).toBe('Silver grey')
  await page.getByRole('button', { name: 'Start this trial' }).click()
  await page.waitForURL(/\/plan$/)
})

test('a sheet leads to signing in and back, and after signing out again', async () => {
  const { page } = await tool.newPage({ expected: refusal })
  const headers = { 'content-type': 'application/json' }
  await page.request.post('/api/sign-in', { headers, data: { phrase: 'four blue skeins' } })
  const made = await page.request.post('/api/trials', { headers, data: { title: 'A', question: 'B?' } })
  const sheet = `/sheets/trials/${(await made.json()).id}`
  await page.context().clearCookies()

  await page.goto(sheet)
  expect(new URL(page.url()).pathname).toBe('/sign-in')
  await page.getByLabel('Access phrase').fill('four blue skeins')
  await page.getByRole('button', { name: 'Sign in' }).click()
  await page.waitForURL(`**${sheet}`)

  // Nobody is led elsewhere, and whoever is in may leave.
  await page.goto('/sign-in?then=//evil.example/')
  await page.getByRole('button', { name: 'Sign out' }).click()
  await page.getByLabel('Access phrase').waitFor()
  await page.goto(sheet)
  expect(new URL(page.url()).pathname).toBe('/sign-in')
})
