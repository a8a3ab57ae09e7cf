import { createServer } from 'node:http'
import { expect, onTestFinished, test } from 'vitest'
import { type PageOptions, toolInBrowser } from '#test/support/tool-in-browser.ts'

const tool = toolInBrowser()

/** The browser says what it keeps such a page from, and that is wanted. */
const keptOut: PageOptions = { expected: /./ }

/** A page of a stranger, on a port of its own: where it stands. */
async function strangersPage(body: string): Promise<string> {
  const server = createServer((_, answer) => {
    answer.setHeader('content-type', 'text/html')
    answer.end(`<!doctype html><title>A stranger</title>${body}`)
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  onTestFinished(() => void server.close())
  return `127.0.0.1:${(server.address() as { port: number }).port}`
}

const call = async (path: string, body?: unknown): Promise<Record<string, unknown>> => {
  const headers = { 'content-type': 'application/json' }
  const sent = body === undefined ? {} : { method: 'POST', headers, body: JSON.stringify(body) }
  return (await (await fetch(tool.url + path, sent)).json()) as Record<string, unknown>
}

/** A trial with a rule that is not locked yet. */
async function trialWithRule(): Promise<{ id: string; stands: () => Promise<unknown> }> {
  const { id } = await call('/api/trials', { title: 'Silver grey', question: 'Is half the time enough?' })
  await call(`/api/trials/${id}/rules`, {
    conditions: [{ outcome: 'dE00', statistic: 'upper limit', margin: 1 }],
    plannedSessions: 3,
  })
  const stands = async () => [
    await call(`/api/trials/${id}`),
    await call(`/api/trials/${id}/rules`),
    await call(`/api/trials/${id}/skeins`),
    await call('/api/trials'),
  ]
  return { id: String(id), stands }
}

const table = 'skein,L,a,b\nx1,50,1,2\nx2,51,1,2\n'

test.each(['http://HOST', 'http://localhost:PORT', 'http://evil.example:PORT'])(
  'a page at %s changes nothing by a form, a fetch or a beacon, whatever type it sends',
  async (form) => {
    const { id, stands } = await trialWithRule()
    const before = await stands()
    const host = await strangersPage(`
      <form id="lock" method="post" action="${tool.url}/api/trials/${id}/rules/1/lock"></form>
      <form id="file" method="post" enctype="multipart/form-data" action="${tool.url}/api/trials/${id}/table">
        <textarea name="text">${table}</textarea></form>
      <form id="plain" method="post" enctype="text/plain" action="${tool.url}/api/trials">
        <input name='{"title":"Evil","question":"Is it?","expectation":"' value='"}'></form>`)
    const address = form.replace('HOST', host).replace('PORT', host.split(':')[1] ?? '')

    for (const name of ['lock', 'file', 'plain']) {
      const { page } = await tool.newPage(keptOut)
      await page.goto(address)
      const answered = page.waitForResponse((it) => it.url().startsWith(tool.url))
      await page.evaluate((it) => (document.getElementById(it) as HTMLFormElement).submit(), name)
      expect([name, (await answered).status()]).toEqual([name, 403])
    }

    const { page } = await tool.newPage(keptOut)
    await page.goto(address)
    const statuses: number[] = []
    page.on('response', (it) => {
      if (it.url().startsWith(tool.url)) statuses.push(it.status())
    })
    const seen = await page.evaluate(
      async ({ url, trial, text }) => {
        const to = `${url}/api/trials/${trial}`
        const send = (path: string, body: BodyInit | null) =>
          fetch(to + path, { method: 'POST', mode: 'no-cors', credentials: 'include', body }).then(
            ({ type }) => type,
            () => 'refused',
          )
        const answers = [
          await send('/table?ownVessel=true', text),
          await send('/table?ownVessel=true', new Blob([text])),
          await send('/table', new URLSearchParams({ text })),
          await send('/rules/1/lock', null),
          await send('/verdicts', null),
          await send('/plan/draw', new Blob(['{}'], { type: 'text/plain' })),
        ]
        navigator.sendBeacon(`${to}/rules/1/lock`)
        // With a type that asks first, the browser asks, hears no yes, and never sends it.
        const asked = await fetch(`${to}/rules/1/lock`, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: '{}',
        }).catch(() => 'refused')
        const removed = await fetch(to, { method: 'DELETE' }).catch(() => 'refused')
        const read = await fetch(`${url}/api/trials`).catch(() => 'refused')
        return { answers, asked, removed, read }
      },
      { url: tool.url, trial: id, text: table },
    )
    expect(seen).toEqual({
      answers: Array.from({ length: 6 }, () => 'refused'),
      asked: 'refused',
      removed: 'refused',
      read: 'refused',
    })
    expect(statuses.filter((status) => status < 400)).toEqual([])
    expect(await stands()).toEqual(before)
  },
)

test('under a name that a stranger leads to this machine there is nothing to see, and nothing to write', async () => {
  await trialWithRule()
  const { page } = await tool.newPage(keptOut)
  const rebound = tool.url.replace('127.0.0.1', 'evil.example')
  for (const path of ['/api/trials', '/api/openapi.json', '/', '/sheets/sheet.css']) {
    const answer = await page.goto(rebound + path)
    expect([path, answer?.status()]).toEqual([path, 421])
    expect(await page.content()).not.toContain('Silver grey')
  }
  // Seen from such a page itself, where the browser takes the tool for its own server.
  const statuses = await page.evaluate(async () => {
    const read = await fetch('/api/trials')
    const written = await fetch('/api/trials', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ title: 'Evil', question: 'Is it?' }),
    })
    return [read.status, written.status]
  })
  expect(statuses).toEqual([421, 421])
})

test('no page of another address frames the tool or loads its answers', async () => {
  const host = await strangersPage(
    `<iframe src="${tool.url}/"></iframe><img id="icon" src="${tool.url}/icon.svg"><script src="${tool.url}/api/trials"></script>`,
  )
  const { page, complaints } = await tool.newPage(keptOut)
  await page.goto(`http://${host}`)
  await page.waitForLoadState('networkidle')
  expect(await page.locator('#icon').evaluate((it) => (it as HTMLImageElement).naturalWidth)).toBe(0)
  expect(page.frames().some((frame) => frame.url() === `${tool.url}/`)).toBe(false)
  expect(complaints.join('\n')).toContain('frame')
})

test('the tool’s own pages write under each of its names', async () => {
  const { page } = await tool.newPage()
  for (const name of ['127.0.0.1', 'localhost']) {
    await page.goto(`${tool.url.replace('127.0.0.1', name)}/start?pattern=P1`)
    await page.getByRole('button', { name: 'Start this trial' }).click()
    await page.waitForURL(/\/plan$/)
  }
})
