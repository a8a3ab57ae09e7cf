import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'

const axe = readFileSync(new URL(import.meta.resolve('axe-core/axe.min.js')), 'utf8')

type Found = { readonly id: string; readonly nodes: readonly { readonly target: readonly unknown[] }[] }
type WithAxe = { readonly axe: { run(): Promise<{ readonly violations: readonly Found[] }> } }

/** What axe finds wrong with a page, each with where; an empty list is wanted. */
export async function axeFindings(page: Page): Promise<string[]> {
  // By evaluation, not by a script element: the page's own policy lets no other script in.
  await page.evaluate(axe)
  return page.evaluate(async () => {
    const { violations } = await (globalThis as unknown as WithAxe).axe.run()
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => String(target)).join(', ')}`)
  })
}
