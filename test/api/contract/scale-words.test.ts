import { expect, test } from 'vitest'
import { protocolsInWords, scalesInWords } from '#api/contract/scale-words.ts'
import { protocols } from '#api/science/fastness/protocols.ts'

test('every protocol of the tool is told in words', () => {
  const told = protocolsInWords.map(([name]) => name).join(' ')
  for (const { code, kind } of protocols) if (kind !== 'rub') expect(told).toContain(`(${code})`)
  expect(told).toContain('Dry and wet rub')
})

test('every temperature is given in °F too', () => {
  for (const [name, words] of protocolsInWords)
    if (words.includes('°C')) expect(`${name}: ${words}`).toMatch(/°C \([\d–]+ °F\)/)
})

test('what goes after a standard says so and how it differs; the rest is marked as common practice', () => {
  for (const { name, source } of scalesInWords)
    expect(`${name}: ${source}`).toMatch(/in the manner of ISO|common practice/)
})
