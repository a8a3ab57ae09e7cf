import { expect, test } from 'vitest'
import { lineAt, sourceFiles, textOf } from '#test/support/source-files.ts'

/** Where an answer may be worded: the gate itself and its words; the calculation addresses answer without a gate. */
const worded = ['api/judging/', 'api/words/', 'api/science/verdicts/', 'api/calculations/']

// The answers of the gate, as they end a sentence or a part of one, inside a text of the code.
const answer =
  /['`"][^'`"\n]*(?: is enough\b| is too short\b| is as good as | is no better than | does not hold\b| stands light like )[^'`"\n]*['`"]/g

test('no file beside the gate words an answer', () => {
  const found = ['api', 'web', 'db']
    .flatMap(sourceFiles)
    .filter((file) => !worded.some((place) => file.startsWith(place)) && !/^web\/pages\/method/.test(file))
    .flatMap((file) => {
      const text = textOf(file)
      return [...text.matchAll(answer)].map(
        (hit) => `${file}:${lineAt(text, hit.index)} ${hit[0].slice(0, 60)}`,
      )
    })
  expect(found).toEqual([])
})

test('every question has one engine in the register, and every engine one file of its own', async () => {
  const { engines } = await import('#api/judging/engines.ts')
  const { questions } = await import('#api/contract/question.ts')
  expect(Object.keys(engines).sort()).toEqual([...questions].sort())
  const files = sourceFiles('api/judging')
  for (const question of questions) expect(files).toContain(`api/judging/${question}.ts`)
})
