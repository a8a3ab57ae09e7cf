import { expect, test } from 'vitest'
import { whyTooLarge } from '#api/http/size-of-json.ts'

const nested = (depth: number) => `${'['.repeat(depth)}${']'.repeat(depth)}`
const keys = (prefix: string, n: number) => Array.from({ length: n }, (_, i) => `"${prefix}${i}":0`).join()

test.each([
  ['64 deep', nested(64)],
  ['brackets and commas in a text', JSON.stringify(`"${'[,'.repeat(600_000)}\\`)],
  ['100,000 rows of the same keys', `[${Array(100_000).fill('{"L":50,"a":1,"b":2}').join()}]`],
  ['a list of 100,001', `[${'0,'.repeat(100_000)}0]`],
  ['a short body of many keys', `{${keys('k', 3000)}}`],
])('it may be taken apart: %s', (_, text) => {
  expect(whyTooLarge(text)).toBeUndefined()
  expect(() => JSON.parse(text)).not.toThrow()
})

test.each([
  ['65 deep', nested(65), 'This is nested more than 64 deep.'],
  [
    'after many that were closed again',
    `[${'[],'.repeat(70)}${nested(64)}]`,
    'This is nested more than 64 deep.',
  ],
  ['a list of 100,002', `[${'0,'.repeat(100_001)}0]`, 'This holds a list of more than 100,001.'],
  [
    'half a million values',
    `[${`[${'0,'.repeat(99_999)}0],`.repeat(6)}0]`,
    'This holds more than 500000 values.',
  ],
  [
    'lists',
    `[${`[${'[],'.repeat(99_999)}0],`.repeat(5)}0]`,
    'This holds more than 450000 lists and objects.',
  ],
  ['different keys', `{${keys('k', 30_000)}}`, 'This holds too many different keys.'],
  [
    'different keys in many objects',
    `[${Array.from({ length: 300 }, (_, i) => `{${keys(`k${i}x`, 100)}}`).join()}]`,
    'This holds too many different keys.',
  ],
])('it is not taken apart: %s', (_, text, sentence) => {
  expect(whyTooLarge(text)).toBe(sentence)
})
