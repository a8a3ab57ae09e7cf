import { expect, test } from 'vitest'
import { type Import, importsOf } from '#test/support/imports-of.ts'
import { sourceFiles } from '#test/support/source-files.ts'

type Layer = {
  /** Folders and files of ours whose values it may use. */
  readonly ours: readonly string[]
  /** Of these it may know the types alone. */
  readonly typesOf?: readonly string[]
  readonly packages: readonly string[]
}

/** Which way imports run. The longest folder that fits a file is its layer. */
const layers: Readonly<Record<string, Layer>> = {
  'api/science': { ours: ['api/science'], packages: ['simple-statistics'] },
  // Of the words only how a number is written, which itself needs nothing.
  'api/contract': {
    ours: ['api/contract', 'api/science', 'api/words/numbers.ts'],
    packages: ['@hono/zod-openapi', 'zod'],
  },
  // The gate of every claim and its words: pure, so that a reader's own browser can judge again.
  'api/words': { ours: ['api/words', 'api/science', 'api/contract'], typesOf: ['db'], packages: [] },
  'api/judging': {
    ours: ['api/judging', 'api/words', 'api/science', 'api/contract'],
    typesOf: ['db'],
    packages: ['simple-statistics'],
  },
  'api/http': { ours: ['api/http', 'api/contract'], typesOf: ['db'], packages: ['*'] },
  api: { ours: ['api', 'db'], packages: ['*'] },
  // A row that is refused is refused by name and pointer: the only values of the contract that queries use.
  db: {
    ours: ['db', 'api/contract/problem.ts', 'api/contract/faults.ts'],
    typesOf: ['api/contract'],
    packages: ['kysely', 'pg', '@electric-sql/pglite', 'csv-parse', 'node:'],
  },
  'web/vite.config.ts': { ours: [], packages: ['*'] },
  web: {
    ours: ['web', 'api/contract', 'api/science', 'api/words'],
    typesOf: ['api'],
    packages: [
      'preact',
      '@preact/signals',
      'preact-iso',
      'chart.js',
      'hono/client',
      '@fontsource-variable',
      'vite/client',
    ],
  },
}

const all = ['api', 'db', 'web'].flatMap(sourceFiles)
const isIn = (target: string, places: readonly string[]): boolean =>
  places.some((place) => target === place || target.startsWith(place.endsWith(':') ? place : `${place}/`))

function layerOf(file: string): Layer {
  const names = Object.keys(layers).filter((name) => isIn(file, [name]))
  const longest = names.sort((a, b) => b.length - a.length)[0] ?? ''
  return layers[longest] ?? { ours: [], packages: [] }
}

function mayImport({ file, target, typeOnly }: Import): boolean {
  const { ours, typesOf = [], packages } = layerOf(file)
  if (/^(api|db|web|test)\//.test(target)) return isIn(target, ours) || (typeOnly && isIn(target, typesOf))
  return packages[0] === '*' || isIn(target, packages)
}

const inWords = ({ file, line, target, typeOnly }: Import): string =>
  `${file}:${line} imports ${typeOnly ? 'types of ' : ''}${target}`

test('imports run one way: web to contract and science, api to db, science to itself', () => {
  const wrong = all.flatMap(importsOf).filter((it) => !mayImport(it))
  expect(wrong.map(inWords)).toEqual([])
})

test('what the pages load from the contract brings no schemas along', () => {
  const reached = new Map<string, Import>()
  const follow = (file: string): void => {
    for (const it of importsOf(file)) {
      if (it.typeOnly || reached.has(it.target)) continue
      reached.set(it.target, it)
      if (/^(api|web)\/.*\.tsx?$/.test(it.target)) follow(it.target)
    }
  }
  sourceFiles('web')
    .filter((file) => file !== 'web/vite.config.ts')
    .forEach(follow)
  const schemas = ['zod', '@hono/zod-openapi'].flatMap((name) => reached.get(name) ?? [])
  expect(schemas.map(inWords)).toEqual([])
})

test('no file is called index, utils or helpers', () => {
  expect(all.filter((file) => /(^|\/)(index|utils?|helpers?)\b[^/]*$/.test(file))).toEqual([])
})

test('code is imported with the ending of its file', () => {
  const bare = all
    .flatMap(importsOf)
    .filter(({ target }) => /^(api|db|web|test)\//.test(target) && !/\.\w+(\?\w+)?$/.test(target))
  expect(bare.map(inWords)).toEqual([])
})
