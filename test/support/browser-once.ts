import type { TestProject } from 'vitest/node'
import { findOrInstallBrowser, launchBrowser } from './browser.ts'
import { missingHere } from './missing-here.ts'
import './provided.ts'

/** Finds the browser, or installs one where that may be, and starts it once for all files. */
export default async function browserOnce(project: TestProject): Promise<() => Promise<void>> {
  const found = findOrInstallBrowser()
  if ('missing' in found) return missingHere(project, found.missing)
  const browser = await launchBrowser(found.path)
  project.provide('browser', browser.wsEndpoint())
  project.provide('missing', null)
  return () => browser.close()
}
