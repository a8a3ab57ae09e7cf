import { expect, test } from 'vitest'
import { withDeltaE } from '#web/parts/delta-e.tsx'
import { isCurrent } from '#web/parts/site-header.tsx'

const words = (text: string): unknown[] => {
  const parts = withDeltaE(text)
  return (Array.isArray(parts) ? parts : [parts]).map((part) => (typeof part === 'string' ? part : 'ΔE'))
}

test('every ΔE00 of a sentence is set with its noughts below the line, the rest stays', () => {
  expect(words('between −0.47 and 0.50 ΔE00; noise 0.3 ΔE₀₀')).toEqual([
    'between −0.47 and 0.50 ',
    'ΔE',
    '; noise 0.3 ',
    'ΔE',
    '',
  ])
  expect(words('felting 2 or less')).toEqual(['felting 2 or less'])
})

test('a place is current on its own page and on those below it, home on its own alone', () => {
  expect(isCurrent('/calculators', '/calculators/acid')).toBe(true)
  expect(isCurrent('/calculators', '/calculators-old')).toBe(false)
  expect(isCurrent('/', '/calculators')).toBe(false)
  expect(isCurrent('/', '/')).toBe(true)
})
