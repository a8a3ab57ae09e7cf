import type { TestProject } from 'vitest/node'
import { findOrInstallBrowser } from './browser.ts'
import { missingHere } from './missing-here.ts'
import './provided.ts'

/** Finds the browser once, or installs one where that may be. */
export default async function browserOnce(project: TestProject): Promise<(() => Promise<void>) | undefined> {
  const browser = findOrInstallBrowser()
  if ('missing' in browser) return missingHere(project, browser.missing)
  project.provide('browser', browser.path)
  project.provide('missing', null)
  return undefined
}
