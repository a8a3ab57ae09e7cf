import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, expect, inject, onTestFinished } from 'vitest'
import { emptyDatabase } from './empty-database.ts'
import { startServer } from './running-server.ts'
import { serveHere } from './served-here.ts'
import './provided.ts'

export type ToolInBrowser = {
  /** The tool's address: `http://127.0.0.1:…`. */
  readonly url: string
  /**
   * A page of a fresh profile, closed after the test, and what the browser complains of meanwhile. A complaint fails
   * the test, unless it was expected: what a refused request leaves in the console, for one.
   */
  newPage(options?: PageOptions): Promise<{ page: Page; complaints: readonly string[] }>
  /** Takes away what earlier tests of the file have kept. */
  empty(): Promise<void>
}
export type PageOptions = BrowserContextOptions & { readonly expected?: RegExp }

/** What Chromium writes into its console when the tool refuses what was sent. */
export const refusal = /^Failed to load resource: the server responded with a status of 4\d\d/

// Without motion: a colour that is still changing has another contrast.
const usual = { locale: 'en-GB', reducedMotion: 'reduce' } as const

type Running = { readonly url: string; stop(): Promise<unknown> }

// One connection for each worker; it ends with the worker.
const kept = globalThis as { runsClearTestBrowser?: Promise<Browser> }

type ToolOptions = {
  /** As its users start it: the built tool as a process, with a data folder of its own and these settings. */
  readonly asBuilt?: boolean
  readonly environment?: Readonly<Record<string, string>>
}

/**
 * For the top of a `*.browser.test.ts`: the tool on an empty database, and a Chromium. Unless it is wanted `asBuilt`, the
 * tool runs in this process, on the database that the worker has anyway.
 */
export function toolInBrowser({
  environment,
  asBuilt = Boolean(environment),
}: ToolOptions = {}): ToolInBrowser {
  let running: Running | undefined
  let browser: Browser | undefined
  let unexpected: string[] = []

  beforeAll(async () => {
    if (inject('missing')) return
    running = asBuilt ? await startBuilt(environment) : await serveHere(await emptyDatabase())
    kept.runsClearTestBrowser ??= chromium.connect(inject('browser'))
    browser = await kept.runsClearTestBrowser
  })
  afterAll(async () => {
    await running?.stop()
  })
  afterEach(() => {
    const heard = unexpected
    unexpected = []
    expect(heard, 'What the browser complained of').toEqual([])
  })

  return {
    get url() {
      return running?.url ?? ''
    },
    async empty() {
      if (asBuilt) throw new Error('The tool as it is built has a data folder, which is not emptied.')
      await emptyDatabase()
    },
    async newPage({ expected, ...options } = {}) {
      if (!browser || !running) throw new Error('The tool is not running yet: ask for a page inside a test.')
      const context = await browser.newContext({ ...usual, baseURL: running.url, ...options })
      onTestFinished(() => context.close())
      const complaints: string[] = []
      const hear = (complaint: string): void => {
        complaints.push(complaint)
        if (!expected?.test(complaint)) unexpected.push(complaint)
      }
      context.on('weberror', (error) => hear(error.error().message))
      context.on('console', (message) => {
        if (message.type() === 'error' || message.type() === 'warning') hear(message.text())
      })
      return { page: await context.newPage(), complaints }
    },
  }
}

async function startBuilt(environment: ToolOptions['environment'] = {}): Promise<Running> {
  const dataDir = mkdtempSync(join(tmpdir(), 'runs-clear-browser-'))
  cpSync(inject('dataDir'), dataDir, { recursive: true })
  const { url, stop } = await startServer({ dataDir }, { environment })
  return {
    url,
    async stop() {
      await stop()
      rmSync(dataDir, { recursive: true, force: true })
    },
  }
}
