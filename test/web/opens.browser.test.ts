import { expect, test } from 'vitest'
import { toolInBrowser } from '#test/support/tool-in-browser.ts'

const tool = toolInBrowser({ asBuilt: true })

test.each(['/', '/nothing-is-here'])(
  '%s opens, has a heading, and the browser complains of nothing',
  async (path) => {
    const { page, complaints } = await tool.newPage()
    const answer = await page.goto(path)
    expect(answer?.status()).toBe(200)
    await page.getByRole('heading', { level: 1 }).waitFor()
    expect(complaints).toEqual([])
  },
)

test('nothing of a page comes from elsewhere', async () => {
  const { page } = await tool.newPage()
  const elsewhere: string[] = []
  page.on('request', (request) => {
    if (!request.url().startsWith(tool.url)) elsewhere.push(request.url())
  })
  await page.goto('/')
  await page.getByRole('heading', { level: 1 }).waitFor()
  expect(elsewhere).toEqual([])
})
