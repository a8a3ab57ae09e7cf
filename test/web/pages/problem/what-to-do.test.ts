import { expect, test } from 'vitest'
import { problems } from '#api/contract/problem.ts'
import { whatToDo } from '#web/pages/problem/what-to-do.ts'

test('every refusal has a sentence that says what to do, and none is left over', () => {
  expect(Object.keys(whatToDo).sort()).toEqual(Object.keys(problems).sort())
  for (const words of Object.values(whatToDo)) expect(words).toMatch(/^[A-Z].{20,}\.$/)
})
