import { expect, test } from 'vitest'
import { guessColumns } from '#api/table/guess-columns.ts'
import { colourColumns, coloursOf } from '#web/pages/trial/readings/row-colours.ts'

const ladder = colourColumns(guessColumns(['place', 'L0', 'a0', 'b0', 'L1', 'a1', 'b1']))

test('a row shows its colours before and after, commas and true minuses read', () => {
  expect(coloursOf(['1', '49,6', '-7.1', '−0.9', '57', '-2.3', '6.1'], ladder)).toEqual([
    { L: 49.6, a: -7.1, b: -0.9 },
    { L: 57, a: -2.3, b: 6.1 },
  ])
})

test.each([['460'], [''], ['x'], ['-1']])('with “%s” for L* no colour is made up', (L) => {
  expect(coloursOf(['1', '49.6', '-7.1', '-0.9', L, '-2.3', '6.1'], ladder)).toEqual([])
})

test('a table of single colours shows one, a table without any shows none', () => {
  expect(colourColumns(guessColumns(['skein', 'L', 'a', 'b']))).toEqual([{ L: 1, a: 2, b: 3 }])
  expect(colourColumns(guessColumns(['skein', 'L']))).toEqual([])
})
