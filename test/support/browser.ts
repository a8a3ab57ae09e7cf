import { accessSync, constants } from 'node:fs'
import { delimiter, join } from 'node:path'
import { type BrowserServer, chromium } from 'playwright-core'
import { installPackage } from './install-package.ts'

const names = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'microsoft-edge']

/** An installed Chromium: CHROME_PATH, the PATH, the usual places. */
export function findBrowser(): string | undefined {
  const onPath = (process.env.PATH ?? '')
    .split(delimiter)
    .flatMap((it) => names.map((name) => join(it, name)))
  const windows = ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((it) => process.env[it] ?? [])
  return [
    ...(process.env.CHROME_PATH ? [process.env.CHROME_PATH] : []),
    ...onPath,
    '/usr/bin/chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    ...windows.map((it) => join(it, 'Google/Chrome/Application/chrome.exe')),
  ].find(mayRun)
}

/** The same, after installing one where root may. The reason why not, if there is none. */
export function findOrInstallBrowser(): { path: string } | { missing: string } {
  const found = findBrowser()
  if (found) return { path: found }
  const why = installPackage('chromium')
  const path = findBrowser()
  if (path) return { path }
  return { missing: `There is no Chromium: ${why ?? 'it was installed, but is not in the usual places'}.` }
}

/** Starts the browser for others to connect to; close it after the tests. As root Chromium runs without its sandbox only. */
export function launchBrowser(path: string): Promise<BrowserServer> {
  return chromium.launchServer({
    host: '127.0.0.1',
    executablePath: path,
    args: [
      ...['--disable-gpu', '--no-first-run', '--disable-background-networking', '--disable-dev-shm-usage'],
      '--force-color-profile=srgb',
      // The name by which a stranger’s page leads to this machine: strangers.browser.test.ts.
      '--host-resolver-rules=MAP evil.example 127.0.0.1',
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
    ],
  })
}

function mayRun(path: string): boolean {
  try {
    accessSync(path, constants.X_OK)
    return true
  } catch {
    return false
  }
}
