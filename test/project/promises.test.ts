import { expect, test } from 'vitest'
import { sourceFiles, textOf } from '#test/support/source-files.ts'

// A page that broke, a connection that went, a form that was left: what was typed is not kept then.
const promise = /nothing (?:you|that was) typed is lost|what you typed (?:here )?(?:stays|is still)/i

test('nowhere is it promised that what was typed is not lost', () => {
  const files = [...sourceFiles('api'), ...sourceFiles('web')]
  expect(files.filter((file) => promise.test(textOf(file).replace(/\s+/g, ' ')))).toEqual([])
})
