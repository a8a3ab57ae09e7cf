import fc from 'fast-check'
import { expect, test } from 'vitest'
import { readAmount } from '#api/science/recipe/read-amount.ts'

test.each<[string | number, number]>([
  ['1 1/2', 1.5],
  ['1-1/2', 1.5],
  ['1½', 1.5],
  ['1 ½', 1.5],
  ['½', 0.5],
  ['¼', 0.25],
  ['¾', 0.75],
  ['1⁄8', 0.125],
  ['3/4', 0.75],
  ['12,5', 12.5],
  ['12.5', 12.5],
  [',5', 0.5],
  ['.5', 0.5],
  ['5.', 5],
  ['007', 7],
  ['0', 0],
  ['1 000', 1000],
  ['12 500 000', 12_500_000],
  ['1 000,5', 1000.5],
  ['1 500/1000', 1.5],
  ['-3.5', -3.5],
  ['−3,5', -3.5],
  ['-1/2', -0.5],
  [2.25, 2.25],
])('“%s” is %d', (typed, amount) => {
  expect(readAmount(typed)).toEqual({ kind: 'amount', amount })
})

test.each([
  ['1½ tbsp', 1.5, 'tbsp'],
  ['1 000 g', 1000, 'g'],
  ['1 1/2 cups (US)', 1.5, 'cups (US)'],
  ['¼cup', 0.25, 'cup'],
  ['12,5 mL', 12.5, 'mL'],
  ['82 °C', 82, '°C'],
  ['2 % owf', 2, '% owf'],
])('“%s” is %d %s', (typed, amount, unit) => {
  expect(readAmount(typed)).toEqual({ kind: 'amount', amount, unit })
})

test('blank is blank, never zero', () => {
  expect(readAmount('')).toEqual({ kind: 'blank' })
  expect(readAmount('  \t ')).toEqual({ kind: 'blank' })
})

test('a pinch is refused kindly', () => {
  expect(readAmount('a pinch')).toEqual({
    kind: 'unreadable',
    because: '“a pinch” cannot be counted. Weigh it, or level it off in a spoon.',
  })
})

test.each([
  '1/0',
  '1 00 g',
  '1000 00 g',
  '1.5.2',
  '2-3',
  '10..12',
  '1,000.5',
  'Infinity',
  'NaN',
  'tbsp',
  '--1',
  '½½',
  '1/2/3',
])('“%s” is not read as something else', (typed) => {
  expect(readAmount(typed).kind).toBe('unreadable')
})

test('a number that is not finite is not an amount', () => {
  expect(readAmount(Infinity).kind).toBe('unreadable')
  expect(readAmount(Number.NaN).kind).toBe('unreadable')
})

test('every fraction is read as the quotient it says', () => {
  const whole = fc.integer({ min: 0, max: 99_999 })
  const part = fc.integer({ min: 1, max: 9_999 })
  fc.assert(
    fc.property(whole, part, part, fc.constantFrom(' ', '-', '  '), (count, above, below, gap) => {
      expect(readAmount(`${above}/${below}`)).toEqual({ kind: 'amount', amount: above / below })
      expect(readAmount(`${count}${gap}${above}/${below}`)).toEqual({
        kind: 'amount',
        amount: count + above / below,
      })
    }),
  )
})

test('a decimal comma and a decimal point are the same number', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1e6 }), fc.integer({ min: 0, max: 9_999 }), (before, after) => {
      const amount = Number(`${before}.${after}`)
      expect(readAmount(`${before},${after}`)).toEqual({ kind: 'amount', amount })
      expect(readAmount(`${before}.${after}`)).toEqual({ kind: 'amount', amount })
    }),
  )
})

test('whatever is typed is answered, never thrown', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), (typed) => {
      const read = readAmount(typed)
      expect(read.kind !== 'amount' || Number.isFinite(read.amount)).toBe(true)
    }),
  )
})
