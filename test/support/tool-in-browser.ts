import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
import { afterAll, beforeAll, inject, onTestFinished } from 'vitest'
import { launchBrowser } from './browser.ts'
import { type RunningServer, startServer } from './running-server.ts'
import './provided.ts'

export type ToolInBrowser = {
  /** The tool's address: `http://127.0.0.1:…`. */
  readonly url: string
  /** A page of a fresh profile, closed after the test, and what the browser complained of meanwhile. */
  newPage(options?: BrowserContextOptions): Promise<{ page: Page; complaints: readonly string[] }>
}

type ToolOptions = {
  readonly environment?: Readonly<Record<string, string>>
  /** Switches of Chromium. */
  readonly switches?: readonly string[]
}

/** For the top of a `*.browser.test.ts`: the built tool on an empty database of its own, and a Chromium. */
export function toolInBrowser(options: ToolOptions = {}): ToolInBrowser {
  let folder: string | undefined
  let server: RunningServer | undefined
  let browser: Browser | undefined

  beforeAll(async () => {
    if (inject('missing')) return
    folder = mkdtempSync(join(tmpdir(), 'runs-clear-browser-'))
    cpSync(inject('dataDir'), folder, { recursive: true })
    server = await startServer({ dataDir: folder }, { environment: options.environment ?? {} })
    browser = await launchBrowser(inject('browser'), options.switches)
  })
  afterAll(async () => {
    await browser?.close()
    await server?.stop()
    if (folder) rmSync(folder, { recursive: true, force: true })
  })

  return {
    get url() {
      return server?.url ?? ''
    },
    async newPage(options = {}) {
      if (!browser || !server) throw new Error('The tool is not running yet: ask for a page inside a test.')
      const context = await browser.newContext({ baseURL: server.url, locale: 'en-GB', ...options })
      onTestFinished(() => context.close())
      const page = await context.newPage()
      const complaints: string[] = []
      page.on('pageerror', (error) => complaints.push(error.message))
      page.on('console', (message) => {
        if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text())
      })
      return { page, complaints }
    },
  }
}
