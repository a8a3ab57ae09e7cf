import { join } from 'node:path'
import { expect, test } from 'vitest'
import { examplesIn, faultOf } from '#test/support/example.ts'
import { lineAt, root, sourceFiles, textOf } from '#test/support/source-files.ts'

type Module = Record<string, unknown>

const load = (file: string): Promise<Module> => import(join(root, file)) as Promise<Module>
const withExamples = ['api', 'db', 'web']
  .flatMap(sourceFiles)
  .filter((file) => textOf(file).includes('@example'))

test.each(withExamples)('every example of %s gives what it says', async (file) => {
  const scope = await load(file)
  const faults: string[] = []
  for (const example of examplesIn(textOf(file))) {
    const fault = await faultOf(example, scope)
    if (fault) faults.push(`${file}:${example.line} ${fault}`)
  }
  expect(faults).toEqual([])
})

test('every function that science gives away has an example', async () => {
  const without: string[] = []
  for (const file of sourceFiles('api/science')) {
    const text = textOf(file)
    for (const [name, value] of Object.entries(await load(file))) {
      const declared = new RegExp(`^export (?:async )?(?:function\\*?|const) ${name}\\b`, 'm').exec(text)
      if (typeof value !== 'function' || !declared) continue
      const comment = /\/\*\*(?:(?!\*\/)[\s\S])*\*\/\s*$/.exec(text.slice(0, declared.index))?.[0] ?? ''
      if (!comment.includes('@example')) without.push(`${file}:${lineAt(text, declared.index)} ${name}`)
    }
  }
  expect(without).toEqual([])
})

test.each([
  ['2 + 1 // 3', undefined],
  ['0.0249 // 0.02', undefined],
  ['0.0251 // 0.02', 'says 0.02 and gives 0.0251'],
  ['1234.5 // 1.2e3', undefined],
  ['-0.1 + -0.2 // -0.3', undefined],
  ['({ a: [1, -2.04], b: 7 }) // { a: [1, -2.0] }', undefined],
  ['[1, 2, 3] // [1, 2]', 'says [1, 2] and gives [1,2,3]'],
  [`'2 m' // '2 m'`, undefined],
  [`'2 m' // '3 m'`, `says '3 m' and gives "2 m"`],
  ['Number.NaN // 0', 'says 0 and gives null'],
  ['[].at(0) // undefined', undefined],
  ['null.length // 1', `does not run: Cannot read properties of null (reading 'length')`],
  ['2 + 1', 'has no “expression // result” as its last line'],
])('an example is held to the digits it shows: %s', async (line, fault) => {
  const [example] = examplesIn(`/**\n * @example\n * ${line}\n */`)
  expect(example && (await faultOf(example, {}))).toBe(fault)
})
