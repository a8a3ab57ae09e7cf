import { existsSync } from 'node:fs'
import { join } from 'node:path'
import pg from 'pg'
import { expect, test } from 'vitest'
import { createApp } from '#api/app.ts'
import { Settings } from '#api/config.ts'
import { problems } from '#api/contract/problem.ts'
import { kyselyOver } from '#db/kysely-over.ts'
import { root, textOf } from '#test/support/source-files.ts'

/** Every address of the OpenAPI document, as `POST /api/trials/{id}`. Nothing is asked of the database for it. */
async function addresses(): Promise<string[]> {
  const app = createApp({ db: kyselyOver(new pg.Pool()) })
  const document = (await (await app.request('/api/openapi.json')).json()) as {
    paths: Record<string, object>
  }
  return Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`),
  )
}

const isWithin = (guide: string) => (name: string) => !guide.includes(`\`${name}\``)

test('every address stands in the guide for developers', async () => {
  const all = await addresses()
  expect(all).toContain('GET /api/health')
  expect(all.filter(isWithin(textOf('DEVELOPERS.md')))).toEqual([])
})

test('the guide for developers names no address that is not there', async () => {
  const all = new Set([...(await addresses()), 'GET /api/openapi.json'])
  const named = [...textOf('DEVELOPERS.md').matchAll(/`((?:GET|POST|PUT|PATCH|DELETE) \/api\/[^`\s]*)`/g)]
  expect(named.map(([, address = '']) => address).filter((address) => !all.has(address))).toEqual([])
})

test('every setting stands in the guide for developers', () => {
  expect(Object.keys(Settings.shape).filter(isWithin(textOf('DEVELOPERS.md')))).toEqual([])
})

test('every problem stands in the guide for developers', () => {
  expect(Object.keys(problems).filter(isWithin(textOf('DEVELOPERS.md')))).toEqual([])
})

test.each(['README.md', 'DEVELOPERS.md'])('every command of %s can be run', (file) => {
  const { scripts } = JSON.parse(textOf('package.json')) as { scripts: Record<string, string> }
  const own = new Set(['ci', 'install', 'audit', 'outdated'])
  const text = textOf(file)
  const named = [...text.matchAll(/\bnpm (?:run )?([a-z][\w:-]*)/g)].map(([, name = '']) => name)
  expect(named.length).toBeGreaterThan(0)
  expect(named.filter((name) => !(name in scripts) && !own.has(name))).toEqual([])
})

test.each(['README.md', 'DEVELOPERS.md'])('every file that %s names is there', (file) => {
  const named = [...textOf(file).matchAll(/(?:`|\]\()((?:api|db|web|test|\.ci)\/[\w./-]+)(?:`|\))/g)].map(
    ([, name = '']) => name,
  )
  expect(named.filter((name) => !existsSync(join(root, name)))).toEqual([])
})
