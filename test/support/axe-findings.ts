import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'

const axe = readFileSync(new URL(import.meta.resolve('axe-core/axe.min.js')), 'utf8')

type Found = { readonly id: string; readonly nodes: readonly { readonly target: readonly unknown[] }[] }
type Axe = { run(options: object): Promise<{ readonly violations: readonly Found[] }> }
type WithAxe = { readonly axe?: Axe }

/** What axe finds wrong with a page, each with where; an empty list is wanted. */
export async function axeFindings(page: Page): Promise<string[]> {
  // By evaluation, not by a script element: the page's own policy lets no other script in.
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe)
  return page.evaluate(async () => {
    // All rules are tried; only what passes them is not described, which takes half of the time.
    const options = { resultTypes: ['violations'] }
    const { violations = [] } = (await (globalThis as WithAxe).axe?.run(options)) ?? {}
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => String(target)).join(', ')}`)
  })
}
